package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import java.util.Optional;

/**
 * Radial lens distortion by the division model: with {@code c} the centre and {@code R} half the picture's diagonal, a
 * point {@code d} of the film lies at {@code u = c + (d - c) / (1 + k |d - c|^2 / R^2)} in the picture of an ideal
 * pinhole camera. {@code k < 0} is barrel distortion. Both directions are in closed form.
 *
 * <p>Source: Fitzgibbon, Simultaneous linear estimation of multiple view geometry and lens distortion (CVPR 2001).
 *
 * @param centreX centre of distortion, pixels
 * @param centreY centre of distortion, pixels
 * @param radiusPixels the length that {@code k} speaks of: half the picture's diagonal, above 0
 * @param k strength without unit, above -1 so that the picture's corner stays finite; 0 for a straight lens
 */
public record Lens(double centreX, double centreY, double radiusPixels, double k) {

    public Lens {
        if (!Double.isFinite(centreX) || !Double.isFinite(centreY) || !(radiusPixels > 0) || !(k > -1 && k < 1)) {
            throw new IllegalArgumentException("lens out of range: centre (" + centreX + ", " + centreY + "), radius "
                    + radiusPixels + ", k " + k);
        }
    }

    /** The lens of a picture of this size, centred. */
    public static Lens centred(int widthPixels, int heightPixels, double k) {
        return new Lens(
                (widthPixels - 1) / 2.0, (heightPixels - 1) / 2.0, Math.hypot(widthPixels, heightPixels) / 2, k);
    }

    /** The same lens with another strength. */
    public Lens withStrength(double strength) {
        return new Lens(centreX, centreY, radiusPixels, strength);
    }

    /** From the film to the ideal picture. Empty far outside the picture, where the model ends. */
    public Optional<PixelPoint> straighten(PixelPoint film) {
        double dx = film.x() - centreX;
        double dy = film.y() - centreY;
        double divisor = 1 + k * (dx * dx + dy * dy) / (radiusPixels * radiusPixels);
        if (divisor <= 0) {
            return Optional.empty();
        }
        return Optional.of(new PixelPoint(centreX + dx / divisor, centreY + dy / divisor));
    }

    /** From the ideal picture to the film. Empty where no film point maps there. */
    public Optional<PixelPoint> bend(double idealX, double idealY) {
        double dx = idealX - centreX;
        double dy = idealY - centreY;
        double root = 1 - 4 * k * (dx * dx + dy * dy) / (radiusPixels * radiusPixels);
        if (!(root > 0) || Double.isInfinite(root)) {
            return Optional.empty();
        }
        double factor = 2 / (1 + Math.sqrt(root));
        return Optional.of(new PixelPoint(centreX + dx * factor, centreY + dy * factor));
    }
}
