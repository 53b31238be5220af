package floorgauge.app.export;

/** Writes findings or tracks in one format. */
@FunctionalInterface
interface Exporter {

    /**
     * Writes.
     *
     * @throws floorgauge.court.failure.MendableException where the user must mend something first
     */
    void write(ExportOrder order, ExportFolder folder);
}
