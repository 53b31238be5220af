package floorgauge.events.script;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What a role does in a step of a script. */
public enum ScriptVerb {
    SCREEN("screens", "5 screens for 2 at right block (down screen)", "for"),
    PASS("passes", "1 passes to 2", "to"),
    HANDOFF("hands off", "4 hands off to 1", "to"),
    CUT("cuts", "2 cuts to right slot off 5", "to"),
    DRIBBLE("dribbles", "1 dribbles to top off 4", "to"),
    SHOOT("shoots", "2 shoots", "");

    private final String word;
    private final String example;
    private final String need;

    ScriptVerb(String word, String example, String need) {
        this.word = word;
        this.example = example;
        this.need = need;
    }

    /** As it stands in a script after the role. */
    public String word() {
        return word;
    }

    /** A whole step with this verb. */
    public String example() {
        return example;
    }

    /** The word that must follow, such as {@code for}; empty where none must. */
    String need() {
        return need;
    }

    /** Whether a team-mate, not a place, stands behind {@link #need}. */
    boolean meansTeamMate() {
        return this == SCREEN || this == PASS || this == HANDOFF;
    }

    /** Whether someone else, or nobody, has the ball afterwards. */
    boolean movesBall() {
        return this == PASS || this == HANDOFF || this == SHOOT;
    }

    /** Words that may begin a part of a step with this verb. */
    List<String> parts() {
        return switch (this) {
            case SCREEN -> List.of("for", "at");
            case PASS, HANDOFF -> List.of("to");
            case CUT, DRIBBLE -> List.of("to", "off");
            case SHOOT -> List.of();
        };
    }

    static Optional<ScriptVerb> of(String word) {
        return Arrays.stream(values()).filter(v -> v.word.equals(word)).findFirst();
    }

    static List<String> words() {
        return Arrays.stream(values()).map(ScriptVerb::word).toList();
    }
}
