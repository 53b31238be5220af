package floorgauge.events.finding;

/** The unit of a figure. */
public enum Unit {
    METRES("m"),
    SECONDS("s"),
    METRES_PER_SECOND("m/s"),
    SQUARE_METRES("m²"),
    DEGREES("°"),
    /** Out of 100. */
    POINTS("of 100"),
    /** A share, 0 to 1. */
    SHARE("share"),
    /** A whole number of things. */
    COUNT("");

    private final String symbol;

    Unit(String symbol) {
        this.symbol = symbol;
    }

    /** As it is written after a number; empty for a count. */
    public String symbol() {
        return symbol;
    }
}
