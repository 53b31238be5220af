package floorgauge.events.screen;

/** How the defence plays a ball screen. */
public enum DefenceAnswer {
    /** D goes between U and S. */
    OVER("over"),
    /** D passes on the far side of S. */
    UNDER("under"),
    /** D and E exchange. */
    SWITCH("switch"),
    /** E steps out beyond S toward the ball, then recovers. */
    HEDGE("hedge"),
    /** Both stay on the ball. */
    BLITZ("blitz"),
    /** E stays well below S. */
    DROP("drop");

    private final String words;

    DefenceAnswer(String words) {
        this.words = words;
    }

    /** The trade's word, lower case. */
    public String words() {
        return words;
    }
}
