package floorgauge.vision.tracking;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.opencv.core.Rect;

/**
 * Which part of the picture the detector looks at, and how enlarged: no more than where players can be, at the size at which
 * it sees them best. Both follow from the calibration, so that a film's resolution and a camera's zoom change neither what
 * is found nor what it costs.
 *
 * @param region part of the picture, pixels
 * @param scale network pixels for one picture pixel
 */
record DetectionView(Rect region, double scale) {

    /**
     * Height in network pixels that the smallest players on the floor are brought to. The detector's recall does not grow
     * when players of 45 to 75 pixels are enlarged (its card in models/), but people who stand close are told apart better:
     * on four rendered films HOTA is 0.75 at 48 and 0.78 at 60, on the labelled practice film 0.60 and 0.64, for a third less time.
     */
    private static final double SMALLEST_PLAYER = 60;

    /** A network picture larger than this many pixels costs more than it finds. */
    private static final double MOST_PIXELS = 1280 * 736;

    /** Enlarging further adds no detail. */
    private static final double MOST_SCALE = 2;

    private static final double STATURE_METRES = 1.85;

    /** Above a player: a jump with raised arms. */
    private static final double REACH_METRES = 2.8;

    /** Points of the floor looked at along each side: a court's are less than a metre apart. */
    private static final int STEPS = 40;

    /** The whole picture as it is, but no larger than the network's time allows. */
    static DetectionView whole(CourtCalibration calibration) {
        Rect region = new Rect(0, 0, calibration.widthPixels(), calibration.heightPixels());
        return new DetectionView(region, Math.min(1, Math.sqrt(MOST_PIXELS / ((double) region.width * region.height))));
    }

    /** The whole picture, at the scale that the people on the floor ask for. */
    static DetectionView everywhere(CourtCalibration calibration, double marginMetres) {
        Bounds bounds = new Bounds();
        List<Double> statures = new ArrayList<>();
        addFloor(calibration, marginMetres, bounds, statures);
        Rect region = new Rect(0, 0, calibration.widthPixels(), calibration.heightPixels());
        return new DetectionView(region, scale(statures, region));
    }

    /** The floor's part of the picture, with room for those who stand on it. */
    static DetectionView of(CourtCalibration calibration, double marginMetres) {
        Bounds bounds = new Bounds();
        List<Double> statures = new ArrayList<>();
        addFloor(calibration, marginMetres, bounds, statures);
        Rect region = bounds.within(calibration.widthPixels(), calibration.heightPixels());
        return new DetectionView(region, scale(statures, region));
    }

    private static void addFloor(
            CourtCalibration calibration, double marginMetres, Bounds bounds, List<Double> statures) {
        double x = calibration.rules().lengthMetres() / 2 + marginMetres;
        double y = calibration.rules().widthMetres() / 2 + marginMetres;
        for (int i = 0; i <= STEPS; i++) {
            for (int k = 0; k <= STEPS; k++) {
                addPoint(calibration, -x + 2 * x * i / STEPS, -y + 2 * y * k / STEPS, bounds, statures);
            }
        }
    }

    private static void addPoint(
            CourtCalibration calibration, double x, double y, Bounds bounds, List<Double> statures) {
        Optional<PixelPoint> foot = calibration.pixelAt(x, y, 0);
        if (foot.isEmpty() || !isInside(foot.get(), calibration)) {
            return;
        }
        bounds.add(foot.get());
        calibration
                .heightInPixels(new FloorPoint(x, y), STATURE_METRES)
                .ifPresentOrElse(
                        stature -> {
                            statures.add(stature);
                            double reach = stature * REACH_METRES / STATURE_METRES;
                            bounds.add(new PixelPoint(
                                    foot.get().x() - stature / 2, foot.get().y() - reach));
                            bounds.add(new PixelPoint(
                                    foot.get().x() + stature / 2, foot.get().y() + 0.1 * stature));
                        },
                        bounds::unlimited);
    }

    private static boolean isInside(PixelPoint p, CourtCalibration calibration) {
        return p.x() >= 0 && p.y() >= 0 && p.x() < calibration.widthPixels() && p.y() < calibration.heightPixels();
    }

    private static double scale(List<Double> statures, Rect region) {
        if (statures.isEmpty()) {
            return 1;
        }
        List<Double> sorted = statures.stream().sorted().toList();
        double wanted = SMALLEST_PLAYER / sorted.get(sorted.size() / 10);
        double affordable = Math.sqrt(MOST_PIXELS / ((double) region.width * region.height));
        return Math.min(MOST_SCALE, Math.min(wanted, affordable));
    }

    /** The picture's part that holds all points. */
    private static final class Bounds {
        private double left = Double.POSITIVE_INFINITY;
        private double top = Double.POSITIVE_INFINITY;
        private double right = Double.NEGATIVE_INFINITY;
        private double bottom = Double.NEGATIVE_INFINITY;
        private boolean unlimited;

        void add(PixelPoint p) {
            left = Math.min(left, p.x());
            right = Math.max(right, p.x());
            top = Math.min(top, p.y());
            bottom = Math.max(bottom, p.y());
        }

        void unlimited() {
            unlimited = true;
        }

        Rect within(int width, int height) {
            if (unlimited || !(right > left && bottom > top)) {
                return new Rect(0, 0, width, height);
            }
            int x0 = (int) Math.max(0, Math.floor(left));
            int y0 = (int) Math.max(0, Math.floor(top));
            int x1 = (int) Math.min(width, Math.ceil(right) + 1);
            int y1 = (int) Math.min(height, Math.ceil(bottom) + 1);
            return x1 > x0 && y1 > y0 ? new Rect(x0, y0, x1 - x0, y1 - y0) : new Rect(0, 0, width, height);
        }
    }
}
