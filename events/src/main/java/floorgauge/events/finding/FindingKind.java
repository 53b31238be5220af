package floorgauge.events.finding;

/** What a finding is about. A flag holds a figure against a standard; the others are measured events. */
public enum FindingKind {
    SCREEN("screen", false),
    PASS("pass", false),
    HANDOFF("handoff", false),
    SHOT("shot", false),
    TURNOVER("turnover", false),
    CUT("cut", false),
    OPEN_WINDOW("open window", false),
    SWITCH("switch", false),
    NUMBERS_ADVANTAGE("numbers advantage", false),
    SCREEN_CHAIN("screen chain", false),
    WEAK_SCREEN("weak screen", true),
    MISSED_SCREEN("missed screen", true),
    MOVING_SCREEN("moving screen", true),
    LATE_PASS("late pass", true),
    MISSED_WINDOW("missed window", true),
    EARLY_CUT("early cut", true),
    LATE_CUT("late cut", true),
    CROWDED_FLOOR("crowded floor", true),
    COLLAPSED_FLOOR("collapsed floor", true),
    STALLED_BALL("stalled ball", true),
    NO_OUTLET("no outlet", true),
    OFF_SCRIPT("off script", true);

    private final String words;
    private final boolean flag;

    FindingKind(String words, boolean flag) {
        this.words = words;
        this.flag = flag;
    }

    /** The trade's words, lower case. */
    public String words() {
        return words;
    }

    /** Whether a standard was missed, as against an event that was merely measured. */
    public boolean isFlag() {
        return flag;
    }
}
