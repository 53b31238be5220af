package floorgauge.events.finding;

/** What a player does in a finding. */
public enum Role {
    SCREENER("screener"),
    SECOND_SCREENER("second screener"),
    USER("user"),
    USER_DEFENDER("user's defender"),
    SCREENER_DEFENDER("screener's defender"),
    PASSER("passer"),
    RECEIVER("receiver"),
    BALL_HANDLER("ball handler"),
    CUTTER("cutter"),
    SHOOTER("shooter"),
    ATTACKER("attacker"),
    DEFENDER("defender"),
    OUTLET("outlet");

    private final String words;

    Role(String words) {
        this.words = words;
    }

    /** The trade's words, lower case. */
    public String words() {
        return words;
    }
}
