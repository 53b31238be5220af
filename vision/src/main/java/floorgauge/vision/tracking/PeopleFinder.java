package floorgauge.vision.tracking;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.vision.background.BackgroundModel;
import floorgauge.vision.crew.Crew;
import floorgauge.vision.crew.InOrder;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.timing.Cadence;
import floorgauge.vision.timing.StageTimes;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.function.Consumer;
import org.opencv.core.Mat;

/**
 * Finds everyone on the floor of a film, several frames at once, each on a thread of its own; what is found goes to its taker in the
 * order of the frames. Not safe for use by several threads. Owns buffers; close it when nothing is under way.
 */
final class PeopleFinder implements AutoCloseable {

    /** A shirt turns slowly, and looks shortly after one another see the same. */
    private static final double NUMBERS_INTERVAL_SECONDS = 0.4;

    private final TrackingSettings settings;
    private final InOrder<Networks> order;
    private final Map<Networks, FrameLooker> lookers = new IdentityHashMap<>();
    private final Cadence looks;
    private final Cadence numbers = Cadence.about(NUMBERS_INTERVAL_SECONDS);
    private FloorView floor;

    /**
     * @param court of the first frame
     * @param crew that works for {@code order}
     */
    PeopleFinder(
            CourtCalibration court,
            TrackingSettings settings,
            Crew<Networks> crew,
            InOrder<Networks> order,
            BackgroundModel background,
            StageTimes times) {
        this.settings = settings;
        this.order = order;
        this.looks = Cadence.atMost(settings.detectionIntervalSeconds());
        this.floor = FloorView.of(court, settings);
        crew.members().forEach(n -> lookers.put(n, new FrameLooker(n, settings, background, times)));
    }

    /**
     * Has the film's next frame looked at, where it is time to.
     *
     * @param court where the court lies in it
     * @param taker hears of everyone in it, later
     */
    void frame(FilmFrame frame, CourtCalibration court, Consumer<Look> taker) {
        if (!looks.isDue(frame.timeSeconds())) {
            return;
        }
        if (!court.equals(floor.court())) {
            floor = FloorView.of(court, settings);
        }
        Mat copy = frame.bgr().clone();
        FrameLooker.Frame wanted = new FrameLooker.Frame(
                copy, frame.index(), frame.timeSeconds(), floor, numbers.isDue(frame.timeSeconds()));
        order.submit(
                networks -> {
                    try {
                        return lookers.get(networks).look(wanted);
                    } finally {
                        copy.release();
                    }
                },
                taker);
    }

    @Override
    public void close() {
        lookers.values().forEach(FrameLooker::close);
    }
}
