package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Radial lens distortion by the division model: with {@code c} the centre and {@code R} half the picture's diagonal, a
 * point {@code d} of the film lies at {@code u = c + (d - c) / (1 + k q + l q^2)}, {@code q = |d - c|^2 / R^2}, in the
 * picture of an ideal pinhole camera. {@code k < 0} is barrel distortion; {@code l} takes up what a lens's curve differs
 * from that of one term.
 *
 * <p>Source: Fitzgibbon, Simultaneous linear estimation of multiple view geometry and lens distortion (CVPR 2001).
 *
 * @param centreX centre of distortion, pixels
 * @param centreY centre of distortion, pixels
 * @param radiusPixels the length that the strengths speak of: half the picture's diagonal, above 0
 * @param k strength without unit, -1 to 1, so that the picture's corner stays finite; 0 for a straight lens
 * @param l second strength without unit, -1 to 1, with {@code 1 + k + l} above 0
 */
public record Lens(double centreX, double centreY, double radiusPixels, double k, double l) {

    private static final int MOST_STEPS = 30;
    private static final double CLOSE_ENOUGH = 1e-14;

    public Lens {
        if (!Double.isFinite(centreX)
                || !Double.isFinite(centreY)
                || !(radiusPixels > 0)
                || !(k > -1 && k < 1)
                || !(l > -1 && l < 1)
                || !(1 + k + l > 0)) {
            throw new IllegalArgumentException("lens out of range: centre (" + centreX + ", " + centreY + "), radius "
                    + radiusPixels + ", k " + k + ", l " + l);
        }
    }

    /** A lens of one term. */
    public Lens(double centreX, double centreY, double radiusPixels, double k) {
        this(centreX, centreY, radiusPixels, k, 0);
    }

    /** The lens of one term of a picture of this size, centred. */
    public static Lens centred(int widthPixels, int heightPixels, double k) {
        return new Lens(
                (widthPixels - 1) / 2.0, (heightPixels - 1) / 2.0, Math.hypot(widthPixels, heightPixels) / 2, k);
    }

    /** The same lens with other strengths. */
    public Lens withStrengths(double first, double second) {
        return new Lens(centreX, centreY, radiusPixels, first, second);
    }

    /** From the film to the ideal picture. Empty far outside the picture, where the model ends. */
    public Optional<PixelPoint> straighten(PixelPoint film) {
        double dx = film.x() - centreX;
        double dy = film.y() - centreY;
        double q = (dx * dx + dy * dy) / (radiusPixels * radiusPixels);
        double divisor = 1 + q * (k + l * q);
        if (divisor <= 0) {
            return Optional.empty();
        }
        return Optional.of(new PixelPoint(centreX + dx / divisor, centreY + dy / divisor));
    }

    /** From the ideal picture to the film. Empty where no film point maps there. */
    public Optional<PixelPoint> bend(double idealX, double idealY) {
        double dx = idealX - centreX;
        double dy = idealY - centreY;
        OptionalDouble factor = bending((dx * dx + dy * dy) / (radiusPixels * radiusPixels));
        return factor.isPresent()
                ? Optional.of(new PixelPoint(centreX + dx * factor.getAsDouble(), centreY + dy * factor.getAsDouble()))
                : Optional.empty();
    }

    /**
     * How much farther from the centre a point lies in the film than in the ideal picture: the root {@code m} of
     * {@code m = 1 + k q m^2 + l q^2 m^4} that starts from 1 at the centre.
     *
     * @param q squared distance from the centre in the ideal picture, in units of the radius
     * @return empty where the curve has turned back before
     */
    OptionalDouble bending(double q) {
        double root = 1 - 4 * k * q;
        if (!(root > 0) || Double.isInfinite(root)) {
            return OptionalDouble.empty();
        }
        double m = 2 / (1 + Math.sqrt(root));
        for (int step = 0; l != 0 && step < MOST_STEPS; step++) {
            double square = m * m;
            double slope = 1 - q * m * (2 * k + 4 * l * q * square);
            double change = (1 + q * square * (k + l * q * square) - m) / slope;
            if (!(slope > 0) || !(m + change > 0)) {
                return OptionalDouble.empty();
            }
            m += change;
            if (Math.abs(change) <= CLOSE_ENOUGH * m) {
                break;
            }
        }
        return OptionalDouble.of(m);
    }
}
