package floorgauge.vision.tracking;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtOverTime;
import floorgauge.court.failure.MendableException;
import floorgauge.court.track.FilmTracks;
import floorgauge.vision.background.BackgroundModel;
import floorgauge.vision.background.BackgroundScan;
import floorgauge.vision.ball.BallLook;
import floorgauge.vision.ball.BallSearch;
import floorgauge.vision.ball.BallTracker;
import floorgauge.vision.ball.BallWatcher;
import floorgauge.vision.crew.Crew;
import floorgauge.vision.crew.InOrder;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import floorgauge.vision.network.DetectorSettings;
import floorgauge.vision.network.ModelFolder;
import floorgauge.vision.network.Precision;
import floorgauge.vision.timing.StageTimes;
import java.nio.file.Path;
import java.util.List;
import org.opencv.core.Mat;

/**
 * Follows everyone on the floor through a film. The film is read twice and streams both times: once for the empty hall,
 * once for the people; what stays in memory is the sightings, not the pictures. Several frames are looked at side by side, each on
 * one thread, so that the number of threads changes no result.
 *
 * <p>Holds the networks, for one film after the other; close it. Not safe for use by several threads. The same film,
 * calibration and settings give the same tracks.
 */
public final class FilmTracker implements AutoCloseable {

    /**
     * Detections below say nothing; between this and {@link #CONFIDENT} they only continue a track. At 0.4 the detector's
     * recall on real film is what it is at 0.25, with fewer false boxes (its card in models/).
     */
    private static final double LEAST_SCORE = 0.25;

    static final double CONFIDENT = 0.4;

    /** Two boxes that share more than this of their union are one person, as box scores count them. */
    private static final double MOST_OVERLAP = 0.5;

    /** Places that score less are not worth remembering: the way of the ball never needs them. */
    private static final double LEAST_BALL_SCORE = 0.08;

    /** A pass lasts a few tenths of a second. */
    private static final double BALL_INTERVAL_SECONDS = 0.07;

    /** More threads than this would hold more memory than they save time. */
    private static final int MOST_THREADS = 8;

    private final TrackingSettings settings;
    private final Crew<Networks> crew;

    /** Hears how far a film has been worked through. */
    @FunctionalInterface
    public interface Progress {

        /**
         * @param filmSeconds presentation time reached
         * @param durationSeconds of the film as its container states it; NaN where it does not
         */
        void reached(double filmSeconds, double durationSeconds);
    }

    /**
     * Loads the networks from the standard folder.
     *
     * @throws floorgauge.vision.network.NetworkException if one is missing or damaged
     */
    public FilmTracker(TrackingSettings settings) {
        this(settings, ModelFolder.standard());
    }

    /**
     * With poses in single precision.
     *
     * @throws floorgauge.vision.network.NetworkException if a network is missing or damaged
     */
    public FilmTracker(TrackingSettings settings, ModelFolder models) {
        this(settings, models, Precision.SINGLE);
    }

    /**
     * With as many threads as there are processors, but not more than eight.
     *
     * @param precision in which networks are computed; it changes results in their last digits
     * @throws floorgauge.vision.network.NetworkException if a network is missing or damaged
     */
    public FilmTracker(TrackingSettings settings, ModelFolder models, Precision precision) {
        this(
                settings,
                models,
                precision,
                Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors()));
    }

    /**
     * @param threads on each of which the networks run; how many changes no result
     * @throws floorgauge.vision.network.NetworkException if a network is missing or damaged
     */
    public FilmTracker(TrackingSettings settings, ModelFolder models, Precision precision, int threads) {
        this.settings = settings;
        DetectorSettings detector = new DetectorSettings(LEAST_SCORE, MOST_OVERLAP);
        this.crew = new Crew<>(threads, () -> Networks.load(models, precision, detector, LEAST_BALL_SCORE));
    }

    /**
     * Tracks a film from a camera that stands still.
     *
     * @param film any film that can be read
     * @param calibration of the film's picture at its own size
     * @param progress told after every frame
     * @throws MendableException if the film can't be read, or no court was found in it
     */
    public TrackedFilm track(Path film, CourtCalibration calibration, Progress progress) {
        return track(film, calibration, progress, new StageTimes());
    }

    /**
     * The same, with the time that each stage takes.
     *
     * @param times added to
     */
    public TrackedFilm track(Path film, CourtCalibration calibration, Progress progress, StageTimes times) {
        return track(film, CourtOverTime.still(calibration), progress, times);
    }

    /**
     * Tracks a film whose camera may move. Where the court is lost nobody is looked for.
     *
     * @param courts of the film's picture at its own size, over time
     * @param times added to
     */
    public TrackedFilm track(Path film, CourtOverTime courts, Progress progress, StageTimes times) {
        CourtCalibration calibration = requireCourt(film, courts);
        try (BackgroundModel background = times.during("empty hall", () -> BackgroundScan.scan(film))) {
            OfflineTracker tracker = new OfflineTracker(settings, CONFIDENT, calibration.rules());
            List<BallLook> balls = watch(film, courts, background, tracker, true, times, progress);
            TrackedFilm people = times.during("tracks", () -> tracker.tracked(background.isKnown()));
            return times.during("ball", () -> withBall(people, balls, calibration));
        }
    }

    /**
     * Only sees people in a film, so that tracks can be made of what was seen more than once.
     *
     * @param times added to
     */
    public RecordedLooks seen(Path film, CourtOverTime courts, StageTimes times) {
        requireCourt(film, courts);
        RecordedLooks record = new RecordedLooks();
        try (BackgroundModel background = times.during("empty hall", () -> BackgroundScan.scan(film))) {
            watch(film, courts, background, record, false, times, (reached, duration) -> {});
        }
        return record;
    }

    private static CourtCalibration requireCourt(Path film, CourtOverTime courts) {
        CourtCalibration calibration = courts.first();
        if (calibration.status() == CalibrationStatus.NONE) {
            throw new MendableException(film + ": no court to place the players on: " + calibration.reason());
        }
        return calibration;
    }

    private List<BallLook> watch(
            Path film,
            CourtOverTime courts,
            BackgroundModel background,
            LookTaker taker,
            boolean withBall,
            StageTimes times,
            Progress progress) {
        InOrder<Networks> order = new InOrder<>(crew);
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame();
                PeopleFinder people = new PeopleFinder(courts.first(), settings, crew, order, background, times);
                BallWatcher ball = new BallWatcher(search(order, times), BALL_INTERVAL_SECONDS, courts.first())) {
            requireSize(film, courts.first(), reader);
            try {
                while (times.during("film", () -> reader.read(frame))) {
                    CourtCalibration court = courts.at(frame.timeSeconds());
                    taker.passed(frame.index(), frame.timeSeconds());
                    if (court.status() != CalibrationStatus.NONE) {
                        people.frame(frame, court, look -> {
                            taker.looked(look.frame(), look.timeSeconds(), look.seen());
                            taker.dropped(look.dropped());
                        });
                    }
                    if (withBall) {
                        ball.frame(frame);
                    }
                    progress.reached(frame.timeSeconds(), reader.info().durationSeconds());
                }
                order.finish();
            } finally {
                order.abandon();
            }
            return ball.looks();
        }
    }

    private static BallSearch search(InOrder<Networks> order, StageTimes times) {
        return (three, found) -> order.submit(
                networks -> {
                    try {
                        return times.during("ball", () -> networks.balls().detect(three));
                    } finally {
                        three.forEach(Mat::release);
                    }
                },
                found);
    }

    private static TrackedFilm withBall(TrackedFilm people, List<BallLook> looks, CourtCalibration calibration) {
        FilmTracks tracks = people.tracks();
        FilmTracks complete = new FilmTracks(
                tracks.frameTimesSeconds(), tracks.players(), BallTracker.track(looks, tracks.players(), calibration));
        return new TrackedFilm(complete, people.kits(), people.staticCamera(), people.fates());
    }

    private static void requireSize(Path film, CourtCalibration calibration, FilmReader reader) {
        int width = reader.info().width();
        int height = reader.info().height();
        if (width != calibration.widthPixels() || height != calibration.heightPixels()) {
            throw new MendableException(film + ": the court was marked in a picture of " + calibration.widthPixels()
                    + " x " + calibration.heightPixels() + " pixels, the film has " + width + " x " + height
                    + "; mark the points in a frame of this film");
        }
    }

    @Override
    public void close() {
        crew.close();
    }
}
