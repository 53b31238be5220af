package floorgauge.vision.body;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.Homography;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;

/** A camera 5 m over the floor at (-12, 0) that looks along x and down by 0.35 rad: 1280 x 720, focal length 900 pixels. */
final class PitchedCamera {

    static final double X = -12;
    static final double ABOVE = 5;
    static final int WIDTH = 1280;
    static final int HEIGHT = 720;
    private static final double FOCAL = 900;
    private static final double DOWN = 0.35;

    private PitchedCamera() {}

    /** Right is -y, ahead (cos, 0, -sin), down (-sin, 0, -cos) of the pitch. */
    static PixelPoint pixelAt(double x, double y, double z) {
        double depth = Math.cos(DOWN) * (x - X) - Math.sin(DOWN) * (z - ABOVE);
        double down = -Math.sin(DOWN) * (x - X) - Math.cos(DOWN) * (z - ABOVE);
        return new PixelPoint((WIDTH - 1) / 2.0 - FOCAL * y / depth, (HEIGHT - 1) / 2.0 + FOCAL * down / depth);
    }

    static CourtCalibration court() {
        double c = Math.cos(DOWN);
        double s = Math.sin(DOWN);
        double u = (WIDTH - 1) / 2.0;
        double v = (HEIGHT - 1) / 2.0;
        double depth0 = -c * X + s * ABOVE;
        Homography floorToPixel = Homography.of(
                u * c,
                -FOCAL,
                u * depth0,
                v * c - FOCAL * s,
                0,
                v * depth0 + FOCAL * (s * X + c * ABOVE),
                c,
                0,
                depth0);
        return CourtCalibration.known(RuleSet.fiba(), floorToPixel.inverse().rowMajor(), WIDTH, HEIGHT);
    }
}
