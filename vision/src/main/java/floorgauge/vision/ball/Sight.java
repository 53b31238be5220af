package floorgauge.vision.ball;

import floorgauge.court.calibration.PinholeCamera;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import java.util.Optional;

/**
 * The ray of a pixel against an upright plane that faces the camera at a player's feet. The ball near a player lies on that
 * plane to within an arm's length.
 *
 * @param lateralMetres from the player's upright, to the right as the camera sees it
 * @param heightMetres above the floor
 * @param depthMetres ahead of the camera
 * @param rightX court frame, unit vector to the right along the plane
 * @param rightY court frame
 */
record Sight(double lateralMetres, double heightMetres, double depthMetres, double rightX, double rightY) {

    /** Below this share of the ray that runs level, the plane can't be met well. */
    private static final double LEAST_ALONG = 1e-6;

    /** Metres ahead of the camera of a point in the court frame. */
    static double depth(PinholeCamera camera, double x, double y, double z) {
        PinholeCamera.Rotation r = camera.rotation();
        return r.zx() * x + r.zy() * y + r.zz() * z + camera.translation().z();
    }

    /** Ideal picture coordinates over the focal length: to the right and down at one metre ahead. */
    static Optional<double[]> bearing(PinholeCamera camera, PixelPoint pixel) {
        return camera.lens().straighten(pixel).map(p -> new double[] {
            (p.x() - camera.lens().centreX()) / camera.focalPixels(),
            (p.y() - camera.lens().centreY()) / camera.focalPixels()
        });
    }

    /** Empty where the ray runs away from the plane. */
    static Optional<Sight> of(PinholeCamera camera, PixelPoint pixel, FloorPoint foot) {
        return bearing(camera, pixel).flatMap(b -> meet(camera, b, foot));
    }

    private static Optional<Sight> meet(PinholeCamera camera, double[] bearing, FloorPoint foot) {
        PinholeCamera.Rotation r = camera.rotation();
        PinholeCamera.Vector from = camera.position();
        double dx = r.xx() * bearing[0] + r.yx() * bearing[1] + r.zx();
        double dy = r.xy() * bearing[0] + r.yy() * bearing[1] + r.zy();
        double dz = r.xz() * bearing[0] + r.yz() * bearing[1] + r.zz();
        double towardX = foot.xMetres() - from.x();
        double towardY = foot.yMetres() - from.y();
        double distance = Math.hypot(towardX, towardY);
        double alongPerUnit = (dx * towardX + dy * towardY) / Math.max(distance, LEAST_ALONG);
        if (!(alongPerUnit > LEAST_ALONG) || !(distance > LEAST_ALONG)) {
            return Optional.empty();
        }
        double s = distance / alongPerUnit;
        // Court x, y and z are right-handed with z up: turning the way to the player by -90 degrees points right.
        double rightX = towardY / distance;
        double rightY = -towardX / distance;
        double lateral = (from.x() + s * dx - foot.xMetres()) * rightX + (from.y() + s * dy - foot.yMetres()) * rightY;
        return Optional.of(new Sight(lateral, from.z() + s * dz, s, rightX, rightY));
    }
}
