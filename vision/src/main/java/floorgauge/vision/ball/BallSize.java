package floorgauge.vision.ball;

import floorgauge.court.calibration.PinholeCamera;

/** How large a ball is and appears. */
final class BallSize {

    /** A size 7 ball measures 75 to 77 cm around (FIBA Official Basketball Rules, Basketball Equipment; from memory). */
    static final double RADIUS_METRES = 0.76 / (2 * Math.PI);

    private BallSize() {}

    /** Radius in the picture of a ball at a point of the court frame that lies ahead of the camera. */
    static double radiusPixels(PinholeCamera camera, double x, double y, double z) {
        return camera.focalPixels() * RADIUS_METRES / Sight.depth(camera, x, y, z);
    }
}
