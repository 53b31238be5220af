package floorgauge.app.export;

/** What can be exported; the names are those of the command line, with a dash for the underscore. */
public enum ExportKind {
    CLIPS("one MP4 a finding, with what was measured burnt in", new ClipFiles()),
    REEL("all findings in one MP4, burnt in likewise", new Reel()),
    OTIO("an OpenTimelineIO timeline for an editor", new EditTimeline()),
    EDL("a CMX 3600 edit decision list", new CutList()),
    CHAPTERS("WebVTT chapters, one file a film", new Chapters()),
    CSV("tables of findings, roles and figures", new CsvTables()),
    PARQUET("the same tables as Parquet", new ParquetTables()),
    JSON("findings of all films in one file", new FindingsDocuments()),
    MOT("tracks as MOTChallenge text, one file a film", new MotChallengeTracks()),
    COCO("poses as COCO keypoints, one file a film", new CocoKeypoints());

    private final String words;
    private final Exporter exporter;

    ExportKind(String words, Exporter exporter) {
        this.words = words;
        this.exporter = exporter;
    }

    /** What it is, in a few words. */
    public String words() {
        return words;
    }

    /**
     * Writes it.
     *
     * @throws floorgauge.court.failure.MendableException where the user must mend something first
     */
    public void write(ExportOrder order, ExportFolder folder) {
        exporter.write(order, folder);
    }
}
