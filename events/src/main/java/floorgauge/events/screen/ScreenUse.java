package floorgauge.events.screen;

/** What came of a screen. */
public enum ScreenUse {
    /** The user ran off it. */
    USED("used"),
    /** The user turned away before it. */
    REJECTED("rejected"),
    /** The screener left before the defender came. */
    SLIPPED("slipped");

    private final String words;

    ScreenUse(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
