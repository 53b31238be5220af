package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import java.util.ArrayList;
import java.util.List;

/**
 * One way to commit the faults of a version. What comes of a fault depends on how the others answer it, so that several are
 * played and the one kept that shows the fault, at a size nearest to the one that was asked for.
 *
 * @param amiss where a screener who misses stands: x along the defender's way from the sound place, y across it, metres
 * @param scale of the sizes of faults in time and speed, and of the pace of a stroll
 */
record Rendition(FloorVector amiss, double scale) {

    /** Metres across the defender's way, and along it; the usual ones first. */
    private static final double[] ACROSS = {0.7, -0.7, 0.9, -0.9, 1.1, -1.1, 0.5, -0.5, 1.3, -1.3};

    private static final double[] ALONG = {0, 0.45, 0.9};
    private static final double[] SCALES = {1, 1.2, 0.8, 1.4, 0.6, 1.7, 2.0};

    /** Those worth trying for some faults, the plainest first. */
    static List<Rendition> of(List<Fault> faults) {
        List<Rendition> renditions = new ArrayList<>();
        if (faults.stream().anyMatch(Fault.ScreenMisses.class::isInstance)) {
            for (double along : ALONG) {
                for (double across : ACROSS) {
                    renditions.add(new Rendition(new FloorVector(along, across), 1));
                }
            }
            return renditions;
        }
        for (double scale : SCALES) {
            renditions.add(new Rendition(FloorVector.ZERO, scale));
        }
        return renditions;
    }

    /** How far it departs from the sizes that were asked for. */
    double departure() {
        return 0.1 * Math.abs(StrictMath.log(scale));
    }
}
