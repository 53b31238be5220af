package floorgauge.court.calibration;

/**
 * How far a marked point lies from where the fitted court puts it.
 *
 * @param label the point's
 * @param xPixels marked less fitted, to the right
 * @param yPixels marked less fitted, downwards
 * @param floorMetres the same on the floor; infinite where the marked pixel lies above the horizon
 */
public record PointResidual(String label, double xPixels, double yPixels, double floorMetres) {}
