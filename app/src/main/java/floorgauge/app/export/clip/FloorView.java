package floorgauge.app.export.clip;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import java.util.List;
import java.util.Optional;

/**
 * Where a point of the floor appears in the film, by the inverse of the homography in {@code findings.json}: with p a pixel and
 * f a floor point in homogeneous coordinates, f ~ H p, so p ~ adj(H) f. A lens's distortion is not in it; towards the picture's edge
 * a floor mark of a distorted film stands some pixels off.
 */
public final class FloorView {

    private final double[] inverse;

    /** Sign of the third coordinate of what lies before the camera. */
    private final double before;

    /**
     * @param pixelToFloor homography row by row; empty where there is none, and then no point appears
     * @param width of the film, pixels
     * @param height of the film, pixels
     */
    public FloorView(List<Double> pixelToFloor, int width, int height) {
        if (pixelToFloor.isEmpty()) {
            inverse = new double[0];
            before = 0;
        } else {
            inverse = adjugate(pixelToFloor);
            // The middle of the lower edge shows the floor before the camera.
            before = Math.signum(row(2, floorAt(pixelToFloor, width / 2.0, height - 1.0)));
        }
    }

    private static FloorPoint floorAt(List<Double> h, double x, double y) {
        double w = h.get(6) * x + h.get(7) * y + h.get(8);
        return new FloorPoint(
                (h.get(0) * x + h.get(1) * y + h.get(2)) / w, (h.get(3) * x + h.get(4) * y + h.get(5)) / w);
    }

    /** The pixel of the film; empty where the point lies behind the camera, or there is no homography. */
    public Optional<PixelPoint> pixelAt(FloorPoint point) {
        if (inverse.length == 0) {
            return Optional.empty();
        }
        double x = row(0, point);
        double y = row(1, point);
        double w = row(2, point);
        if (!(w * before > 0)) {
            return Optional.empty();
        }
        return Optional.of(new PixelPoint(x / w, y / w));
    }

    private double row(int row, FloorPoint point) {
        return inverse[3 * row] * point.xMetres() + inverse[3 * row + 1] * point.yMetres() + inverse[3 * row + 2];
    }

    private static double[] adjugate(List<Double> h) {
        double a = h.get(0);
        double b = h.get(1);
        double c = h.get(2);
        double d = h.get(3);
        double e = h.get(4);
        double f = h.get(5);
        double g = h.get(6);
        double i = h.get(7);
        double j = h.get(8);
        return new double[] {
            e * j - f * i, c * i - b * j, b * f - c * e,
            f * g - d * j, a * j - c * g, c * d - a * f,
            d * i - e * g, b * g - a * i, a * e - b * d
        };
    }
}
