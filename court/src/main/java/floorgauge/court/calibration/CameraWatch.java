package floorgauge.court.calibration;

import java.util.Optional;
import org.opencv.core.Mat;

/**
 * Tells whether a film's camera stands still, from pictures some time apart. Owns native memory; close it. Not safe for use
 * by several threads.
 */
public final class CameraWatch implements AutoCloseable {

    /** A picture moved by more than this share of its width was taken by a camera that moved: 5 cm of floor and more. */
    private static final double MOVED = 0.003;

    private final FrameMotion motion = new FrameMotion();
    private Homography sinceFirst = Homography.identity();
    private boolean begun;
    private boolean moved;
    private boolean unclear;

    /** What was seen. */
    public enum Verdict {
        /** Every picture lies on the one before. */
        STILL,
        /** Some picture is moved against the one before. */
        MOVES,
        /** Pictures follow one another that have too little in common to tell: a cut, or a bare wall. */
        UNCLEAR
    }

    public CameraWatch() {
        OpenCv.load();
    }

    /**
     * Looks at the next picture.
     *
     * @param bgr 8 bits, BGR, of one size all through; left unchanged
     */
    public void look(Mat bgr) {
        Optional<FrameMotion.Motion> seen = motion.next(bgr, Lens.centred(bgr.cols(), bgr.rows(), 0));
        if (seen.isPresent()) {
            sinceFirst = seen.get().beforeToNow().after(sinceFirst);
            moved |= displacement(sinceFirst, bgr.cols(), bgr.rows()) > MOVED * bgr.cols();
        } else {
            unclear |= begun;
            sinceFirst = Homography.identity();
        }
        begun = true;
    }

    /** The middle one of the moves of five places. */
    private static double displacement(Homography h, int width, int height) {
        double[] moves = new double[5];
        int i = 0;
        for (double[] share : new double[][] {{0.5, 0.5}, {0.2, 0.3}, {0.8, 0.3}, {0.2, 0.8}, {0.8, 0.8}}) {
            double x = share[0] * width;
            double y = share[1] * height;
            moves[i++] = Math.hypot(h.mapX(x, y) - x, h.mapY(x, y) - y);
        }
        java.util.Arrays.sort(moves);
        return moves[2];
    }

    /** What the pictures so far say. */
    public Verdict verdict() {
        if (moved) {
            return Verdict.MOVES;
        }
        return unclear ? Verdict.UNCLEAR : Verdict.STILL;
    }

    @Override
    public void close() {
        motion.close();
    }
}
