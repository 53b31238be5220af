package floorgauge.app.chain;

import floorgauge.app.batch.FilmMeasurer;
import floorgauge.app.batch.ResultsFolder;
import floorgauge.app.result.BallParquet;
import floorgauge.app.result.CourtReading;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.RunSettings;
import floorgauge.app.result.TracksParquetReader;
import floorgauge.court.failure.MendableException;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FilmTracks;
import floorgauge.events.Measurement;
import floorgauge.events.finding.Findings;
import floorgauge.events.script.Script;
import floorgauge.events.standards.Standards;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Measures a file of tracks: the files that it is given are taken for films without a picture. */
public final class TracksMeasurer implements FilmMeasurer {

    private final RuleSet rules;
    private final Standards standards;
    private final List<Script> scripts;
    private final double framesPerSecond;
    private final Map<String, String> settings;

    private TracksMeasurer(
            RuleSet rules,
            Standards standards,
            List<Script> scripts,
            double framesPerSecond,
            Map<String, String> settings) {
        this.rules = rules;
        this.standards = standards;
        this.scripts = scripts;
        this.framesPerSecond = framesPerSecond;
        this.settings = settings;
    }

    /**
     * Reads what was asked for.
     *
     * @param framesPerSecond of MOTChallenge text, which carries no times
     * @throws MendableException where no rule book was named, or the standards are wrong
     */
    public static TracksMeasurer of(ChainOptions options, double framesPerSecond) {
        RuleSet rules = new CourtFinder(options.points(), options.saved(), options.court())
                .rules()
                .orElseThrow(() -> new MendableException(
                        "tracks do not say what court they are on; name its rule book, such as --court fiba"));
        if (!(framesPerSecond > 0 && Double.isFinite(framesPerSecond))) {
            throw new MendableException("--frames-per-second must be above 0: " + framesPerSecond);
        }
        Map<String, String> settings = new TreeMap<>(CommonSettings.of(options));
        settings.put("framesPerSecond", Double.toString(framesPerSecond));
        return new TracksMeasurer(
                rules, CommonSettings.standards(options), CommonSettings.scripts(options), framesPerSecond, settings);
    }

    @Override
    public RunSettings settingsFor(Path film) {
        Map<String, String> all = new TreeMap<>(settings);
        Path ball = BallParquet.beside(film);
        all.put("ball", isParquet(film) && Files.isRegularFile(ball) ? new SettingFiles().digest(ball) : "none");
        return RunSettings.of(all);
    }

    @Override
    public String digest(Path film) {
        return new SettingFiles().digest(film);
    }

    @Override
    public double durationSeconds(Path film) {
        return 0;
    }

    @Override
    public ResultsFolder.Contents measure(Path file, String sha256, Progress progress, Warnings warnings) {
        FilmTracks tracks = read(file);
        if (tracks.players().isEmpty()) {
            throw new MendableException(file + " holds no player, so nothing was measured");
        }
        Findings findings = Measurement.measure(tracks, rules, standards, scripts);
        double first = tracks.frameTimesSeconds().get(tracks.frameTimesSeconds().firstKey());
        double last = tracks.frameTimesSeconds().get(tracks.frameTimesSeconds().lastKey());
        FilmSource source = new FilmSource(
                file.getFileName().toString(),
                sha256,
                0,
                0,
                last - first,
                tracks.frameTimesSeconds().size());
        MeasuredFilm measured =
                new MeasuredFilm(source, settingsFor(file), CourtReading.withoutPicture(rules), tracks, findings);
        return new ResultFiles(
                measured,
                Collections.nCopies(findings.all().size(), List.of()),
                CommonSettings.thresholds(standards),
                List.of());
    }

    private FilmTracks read(Path file) {
        return isParquet(file) ? TracksParquetReader.read(file) : MotTracks.read(file, framesPerSecond);
    }

    private static boolean isParquet(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).endsWith(".parquet");
    }
}
