package floorgauge.events.diagram;

/**
 * A player's mark on the drawing.
 *
 * @param trackId who
 * @param attacking whether a circle or a cross
 * @param label what stands in or beside it
 * @param at its middle, {x, y}, millimetres; moved a little where marks would overlap
 */
record PlayerDot(int trackId, boolean attacking, String label, double[] at) {

    static final double RING_RADIUS = 2.05;
    static final double CROSS_HALF = 1.05;
    static final double CROSS_RADIUS = 1.5;
    static final double LABEL_SIZE = 2.9;
    static final double LONG_LABEL_SIZE = 2.35;
    static final double CROSS_LABEL_SIZE = 2.3;

    double radius() {
        return attacking ? RING_RADIUS : CROSS_RADIUS;
    }

    double labelSize() {
        if (!attacking) {
            return CROSS_LABEL_SIZE;
        }
        return label.length() > 1 ? LONG_LABEL_SIZE : LABEL_SIZE;
    }

    /** Half of the width of the letters beside a cross. */
    double labelHalfWidth() {
        return label.length() * labelSize() * SvgText.DIGIT_WIDTH / 2;
    }
}
