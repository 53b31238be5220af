package floorgauge.events.screen;

/** What a screen is called, by where its user comes from and goes. */
public enum ScreenKind {
    BALL("ball screen"),
    HANDOFF("handoff screen"),
    DRAG("drag"),
    DOWN("down screen"),
    BACK("back screen"),
    FLARE("flare screen"),
    CROSS("cross screen"),
    SHUFFLE("shuffle screen"),
    OFF_BALL("off-ball screen");

    private final String words;

    ScreenKind(String words) {
        this.words = words;
    }

    /** The trade's words, lower case. */
    public String words() {
        return words;
    }

    /** Whether the user has the ball. */
    public boolean onBall() {
        return this == BALL || this == DRAG || this == HANDOFF;
    }
}
