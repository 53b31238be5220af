package floorgauge.events.screen;

/** What a screener does once the user has gone by. */
public enum NextAct {
    ROLL("rolls"),
    POP("pops"),
    RESCREEN("screens again"),
    SEAL("seals"),
    STAND("stands"),
    NOT_SEEN("is not seen after it");

    private final String words;

    NextAct(String words) {
        this.words = words;
    }

    /** As it follows the screener in a sentence. */
    public String words() {
        return words;
    }
}
