package floorgauge.vision.ball;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.network.BallDetector;
import floorgauge.vision.network.BallSighting;
import floorgauge.vision.timing.Cadence;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Looks for the ball in a film as its frames stream by. The scale follows from the calibration, so that a ball in the middle of
 * the attacked half has the size at which the network is surest. Keeps three small pictures, no more; close it.
 */
public final class BallWatcher implements AutoCloseable {

    /** Radius in the network's input of a ball in the middle of the half, pixels. */
    private static final double WANTED_RADIUS = 5.5;

    private static final int NARROWEST = 320;
    private static final int WIDEST = 768;

    /** Frames that lie closer than this are as good as one, seconds. */
    private static final double LEAST_STEP = 0.028;

    private static final Scalar GREY = Scalar.all(114);

    private final BallSearch search;
    private final Cadence cadence;
    private final int width;
    private final int height;
    private final double scale;
    private final Deque<Kept> kept = new ArrayDeque<>();
    private final List<BallLook> looks = new ArrayList<>();

    /** A frame made small. */
    private record Kept(long frame, double timeSeconds, Mat picture) {}

    /**
     * @param search finds balls in three pictures
     * @param intervalSeconds time between two looks
     * @param calibration of the film's picture; only its size counts where no court was found
     */
    public BallWatcher(BallSearch search, double intervalSeconds, CourtCalibration calibration) {
        this.search = search;
        this.cadence = Cadence.about(intervalSeconds);
        double wanted = radiusInHalf(calibration).map(r -> WANTED_RADIUS / r).orElse(1.0);
        double bounded = Math.min(WIDEST, Math.max(NARROWEST, calibration.widthPixels() * wanted));
        scale = Math.min(1, bounded / calibration.widthPixels());
        width = (int) Math.round(calibration.widthPixels() * scale);
        height = (int) Math.round(calibration.heightPixels() * scale);
    }

    private static Optional<Double> radiusInHalf(CourtCalibration calibration) {
        FloorPoint middle = seenHalf(calibration);
        return calibration.camera().map(camera -> BallSize.radiusPixels(camera, middle.xMetres(), middle.yMetres(), 1));
    }

    /** The middle of the half that the picture's centre looks at. */
    private static FloorPoint seenHalf(CourtCalibration calibration) {
        PixelPoint low = new PixelPoint(calibration.widthPixels() / 2.0, calibration.heightPixels() * 0.75);
        double quarter = calibration.rules().lengthMetres() / 4;
        boolean right = !calibration.seesFloor(low)
                || calibration.floorAt(low, 1, 1).mean().xMetres() >= 0;
        return new FloorPoint(right ? quarter : -quarter, 0);
    }

    /** Takes the film's next frame; looks where it is time to. */
    public void frame(FilmFrame frame) {
        if (!kept.isEmpty() && frame.timeSeconds() - kept.peekLast().timeSeconds() < LEAST_STEP) {
            return;
        }
        Mat picture = kept.size() == BallDetector.FRAMES
                ? kept.removeFirst().picture()
                : new Mat(roundedUp(height), roundedUp(width), CvType.CV_8UC3, GREY);
        Mat target = picture.submat(0, height, 0, width);
        Imgproc.resize(frame.bgr(), target, new Size(width, height), 0, 0, Imgproc.INTER_AREA);
        target.release();
        kept.addLast(new Kept(frame.index(), frame.timeSeconds(), picture));
        if (kept.size() == BallDetector.FRAMES) {
            look();
        }
    }

    private static int roundedUp(int size) {
        int step = BallDetector.sizeStep();
        return (size + step - 1) / step * step;
    }

    private void look() {
        List<Kept> three = List.copyOf(kept);
        Kept middle = three.get(1);
        if (!cadence.isDue(middle.timeSeconds())) {
            return;
        }
        search.find(
                three.stream().map(k -> k.picture().clone()).toList(),
                found -> looks.add(new BallLook(
                        middle.frame(),
                        middle.timeSeconds(),
                        found.stream().map(this::inFilm).toList())));
    }

    /** From the small picture's pixels to the film's. */
    private BallSighting inFilm(BallSighting s) {
        PixelPoint centre =
                new PixelPoint((s.centre().x() + 0.5) / scale - 0.5, (s.centre().y() + 0.5) / scale - 0.5);
        return new BallSighting(centre, s.radiusPixels() / scale, s.score());
    }

    /** All looks whose results have come, in order of time. */
    public List<BallLook> looks() {
        return Collections.unmodifiableList(looks);
    }

    /** Frees the pictures. */
    @Override
    public void close() {
        kept.forEach(k -> k.picture().release());
        kept.clear();
    }
}
