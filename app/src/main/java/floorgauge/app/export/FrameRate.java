package floorgauge.app.export;

import java.util.List;

/**
 * A film's frames a second as a ratio of whole numbers, as cut lists need it. Films of variable rate have their mean rate
 * here; their moments are then places in time, not counts of pictures.
 *
 * @param numerator at least 1
 * @param denominator at least 1
 */
public record FrameRate(int numerator, int denominator) {

    /** Rates in use (SMPTE ST 12-1 and its multiples; from memory). */
    private static final List<FrameRate> USUAL = List.of(
            new FrameRate(24000, 1001),
            new FrameRate(24, 1),
            new FrameRate(25, 1),
            new FrameRate(30000, 1001),
            new FrameRate(30, 1),
            new FrameRate(48, 1),
            new FrameRate(50, 1),
            new FrameRate(60000, 1001),
            new FrameRate(60, 1),
            new FrameRate(120000, 1001),
            new FrameRate(120, 1));

    /** The rates of 30 and of 30000/1001 are twice as far apart. */
    private static final double LIKENESS = 0.0005;

    private static final int THOUSAND = 1000;

    public FrameRate {
        if (numerator < 1 || denominator < 1) {
            throw new IllegalArgumentException("a rate is above 0: " + numerator + "/" + denominator);
        }
    }

    /** The usual rate that a film has, else its own to a thousandth; 25 where it has no length. */
    static FrameRate of(long frames, double seconds) {
        if (frames < 1 || !(seconds > 0)) {
            return new FrameRate(25, 1);
        }
        double rate = frames / seconds;
        FrameRate nearest = USUAL.get(0);
        for (FrameRate usual : USUAL) {
            if (Math.abs(usual.perSecond() - rate) < Math.abs(nearest.perSecond() - rate)) {
                nearest = usual;
            }
        }
        if (Math.abs(nearest.perSecond() - rate) <= LIKENESS * rate) {
            return nearest;
        }
        return new FrameRate((int) Math.max(1, Math.round(rate * THOUSAND)), THOUSAND);
    }

    /** Frames a second. */
    public double perSecond() {
        return numerator / (double) denominator;
    }

    /** The frame shown at a moment, counted from 0, rounded to the nearest. */
    public long frameAt(double seconds) {
        return Math.round(seconds * perSecond());
    }
}
