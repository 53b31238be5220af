package floorgauge.eval.score;

import floorgauge.eval.statistics.Ratios;

/**
 * One film's share in a measure. The measure of several films is the sum of parts over the sum of wholes.
 *
 * @param part finite
 * @param whole finite, at least 0
 */
public record Sum(double part, double whole) {

    /** Nothing to measure. */
    public static final Sum NONE = new Sum(0, 0);

    public Sum {
        if (!Double.isFinite(part) || !(whole >= 0 && Double.isFinite(whole))) {
            throw new IllegalArgumentException("a sum must be finite: " + part + " of " + whole);
        }
    }

    public Sum plus(Sum other) {
        return new Sum(part + other.part, whole + other.whole);
    }

    /** NaN for nothing. */
    public double value() {
        return Ratios.of(part, whole);
    }
}
