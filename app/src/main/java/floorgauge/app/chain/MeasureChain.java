package floorgauge.app.chain;

import floorgauge.app.batch.FilmMeasurer;
import floorgauge.app.batch.ResultsFolder;
import floorgauge.app.drawing.FigureText;
import floorgauge.app.result.CourtReading;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.RunSettings;
import floorgauge.app.sheet.ShownFrame;
import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtOverTime;
import floorgauge.court.failure.MendableException;
import floorgauge.court.track.FilmTracks;
import floorgauge.events.Measurement;
import floorgauge.events.finding.Findings;
import floorgauge.events.script.Script;
import floorgauge.events.standards.Standards;
import floorgauge.vision.film.FilmHash;
import floorgauge.vision.film.FilmInfo;
import floorgauge.vision.network.ModelFolder;
import floorgauge.vision.network.Precision;
import floorgauge.vision.network.PrecisionTrial;
import floorgauge.vision.timing.StageTimes;
import floorgauge.vision.tracking.FilmTracker;
import floorgauge.vision.tracking.TrackedFilm;
import floorgauge.vision.tracking.TrackingSettings;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** From the pictures of a film to its results: court, tracks, findings, decisive frames. Close it to free the networks. */
public final class MeasureChain implements FilmMeasurer, AutoCloseable {

    /** A film that ends this long before its stated end was cut off; containers round by less. */
    private static final double CUT_OFF_SECONDS = 0.25;

    private final CourtFinder courts;
    private final Standards standards;
    private final TrackingSettings tracking;
    private final Precision precision;
    private final List<Script> scripts;
    private final Map<String, String> commonSettings;
    private final ChainTimes times = new ChainTimes();
    private Optional<FilmTracker> tracker = Optional.empty();

    private MeasureChain(
            CourtFinder courts,
            Standards standards,
            List<Script> scripts,
            TrackingSettings tracking,
            Precision precision,
            Map<String, String> commonSettings) {
        this.precision = precision;
        this.courts = courts;
        this.standards = standards;
        this.scripts = scripts;
        this.tracking = tracking;
        this.commonSettings = commonSettings;
    }

    /**
     * Reads what was asked for.
     *
     * @throws MendableException where a file is missing or wrong, or a rule book unknown
     */
    public static MeasureChain of(ChainOptions options) {
        options.court().filter(CourtFinder::isGymFile).ifPresent(file -> {
            throw new MendableException(
                    file + ": films are measured by a rule book so far; name fiba, nba, ncaa or nfhs"
                            + " (floorgauge court takes a gym's file)");
        });
        Map<String, String> settings = new TreeMap<>(CommonSettings.of(options));
        TrackingSettings tracking = TrackingSettings.defaults();
        if (options.playersPerSide().isPresent()) {
            int players = options.playersPerSide().getAsInt();
            tracking = tracking.withPlayersPerSide(players);
            settings.put("playersPerSide", Integer.toString(players));
        } else {
            settings.put("playersPerSide", "found");
        }
        Precision precision = options.precision()
                .orElseGet(() -> PrecisionTrial.remembered(PrecisionTrial.standardMemory(), ModelFolder.standard()));
        settings.put("precision", precision.name().toLowerCase(Locale.ROOT));
        return new MeasureChain(
                new CourtFinder(options.points(), options.saved(), options.court()),
                CommonSettings.standards(options),
                CommonSettings.scripts(options),
                tracking,
                precision,
                settings);
    }

    /** How long the films measured so far took. */
    public ChainTimes times() {
        return times;
    }

    @Override
    public RunSettings settingsFor(Path film) {
        Map<String, String> settings = new TreeMap<>(commonSettings);
        settings.put(
                "points", courts.pointsFor(film).map(new SettingFiles()::digest).orElse("none"));
        return RunSettings.of(settings);
    }

    @Override
    public String digest(Path film) {
        return FilmHash.sha256(film);
    }

    @Override
    public double durationSeconds(Path film) {
        double stated = Films.info(film).durationSeconds();
        return Double.isNaN(stated) ? 0 : stated;
    }

    @Override
    public ResultsFolder.Contents measure(Path film, String sha256, Progress progress, Warnings warnings) {
        long begun = System.nanoTime();
        StageTimes stages = times.stages();
        FilmInfo info = Films.info(film);
        CourtOverTime overTime =
                stages.during("court", () -> courts.find(film, info, line -> warnings.warn(film + ": " + line)));
        CourtCalibration court = overTime.first();
        warnOfLosses(film, overTime, warnings);
        FilmTracker follower = stages.during("loading networks", this::tracker);
        TrackedFilm tracked = follower.track(film, overTime, (reached, duration) -> progress.reached(reached), stages);
        FilmTracks tracks = tracked.tracks();
        if (tracks.players().isEmpty()) {
            throw new MendableException(film + ": nobody was seen on the court, so nothing was measured; check that the"
                    + " film shows a practice, and the court with floorgauge court");
        }
        Findings findings =
                stages.during("measuring", () -> Measurement.measure(tracks, court.rules(), standards, scripts));
        String source = courts.pointsFor(film).isPresent() ? "points" : "lines";
        MeasuredFilm measured = new MeasuredFilm(
                source(film, sha256, info, tracks, warnings),
                settingsFor(film),
                CourtReading.of(court, source, overTime.isStill()),
                tracks,
                findings);
        List<List<ShownFrame>> frames = stages.during(
                "decisive frames", () -> KeyFramePictures.read(film, Integer.MAX_VALUE, tracks, findings.all()));
        times.measured(film, measured.film());
        ResultFiles files = new ResultFiles(measured, frames, CommonSettings.thresholds(standards), tracked.fates());
        return folder -> {
            stages.during("writing", () -> {
                files.writeInto(folder);
                return folder;
            });
            times.done(begun);
        };
    }

    private static void warnOfLosses(Path film, CourtOverTime courts, Warnings warnings) {
        for (CourtOverTime.Stretch stretch : courts.stretches()) {
            if (stretch.status() == CalibrationStatus.NONE) {
                warnings.warn(film + ": no court from " + FigureText.time(stretch.startSeconds()) + " to "
                        + FigureText.time(stretch.endSeconds()) + ", so nothing is measured there. "
                        + stretch.reason());
            }
        }
    }

    private static FilmSource source(Path film, String sha256, FilmInfo info, FilmTracks tracks, Warnings warnings) {
        double last = tracks.frameTimesSeconds().get(tracks.frameTimesSeconds().lastKey());
        double stated = info.durationSeconds();
        double missing = stated - last - interval(info);
        if (missing > CUT_OFF_SECONDS) {
            warnings.warn(film + ": breaks off at " + FigureText.time(last) + ", " + FigureText.decimal(missing, 1)
                    + " s before its stated end; measured as far as it goes. Copy it again if it should be whole");
        }
        return new FilmSource(
                film.getFileName().toString(),
                sha256,
                info.width(),
                info.height(),
                last + interval(info),
                tracks.frameTimesSeconds().size());
    }

    private static double interval(FilmInfo info) {
        double rate = info.nominalFramesPerSecond();
        return rate > 0 ? 1 / rate : 0;
    }

    /** The networks are loaded when the first film needs them. */
    private FilmTracker tracker() {
        if (tracker.isEmpty()) {
            tracker = Optional.of(new FilmTracker(tracking, ModelFolder.standard(), precision));
        }
        return tracker.get();
    }

    @Override
    public void close() {
        tracker.ifPresent(FilmTracker::close);
    }
}
