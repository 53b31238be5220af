package floorgauge.sampleclips.render.value;

/** Limits for values that hardly ever reach them: a branch that is never taken costs less than a minimum and a maximum. */
public final class Clamp {

    private Clamp() {}

    /** A value, at least 0 and at most {@code most}. */
    public static double from0(double value, double most) {
        if (value > most) {
            return most;
        }
        return value < 0 ? 0 : value;
    }
}
