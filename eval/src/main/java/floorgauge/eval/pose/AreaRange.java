package floorgauge.eval.pose;

/**
 * People of which size in the picture a score is about.
 *
 * @param from least area in square pixels, inside
 * @param to greatest area in square pixels, inside
 */
public record AreaRange(double from, double to) {

    /** Everyone. */
    public static final AreaRange ALL = new AreaRange(0, 1e10);

    /** COCO's medium: 32² to 96² pixels. */
    public static final AreaRange MEDIUM = new AreaRange(32 * 32, 96 * 96);

    /** COCO's large: above 96² pixels. */
    public static final AreaRange LARGE = new AreaRange(96 * 96, 1e10);

    public AreaRange {
        if (!(from >= 0 && to >= from)) {
            throw new IllegalArgumentException("a range ends after its start: " + from + " to " + to);
        }
    }

    boolean holds(double area) {
        return area >= from && area <= to;
    }
}
