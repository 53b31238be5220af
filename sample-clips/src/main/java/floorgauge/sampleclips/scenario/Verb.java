package floorgauge.sampleclips.scenario;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** What a step of a scenario has a player do. */
enum Verb {
    CUT(Side.ATTACK, Main.SPOT, 5.2, "via", "off", "pace", "kind"),
    SPOT_UP(Side.ATTACK, Main.SPOT, 3.0, "via", "off", "pace"),
    ROLL(Side.ATTACK, Main.SPOT, 4.6, "via", "pace"),
    POP(Side.ATTACK, Main.SPOT, 3.8, "via", "pace"),
    DRIBBLE(Side.ATTACK, Main.SPOT, 4.2, "via", "off", "pace"),
    SCREEN(Side.ATTACK, Main.OPPONENT, 3.6, "for", "toward", "at spot", "facing", "pace", "kind"),
    PASS(Side.ATTACK, Main.TEAM_MATE, 9),
    HANDOFF(Side.ATTACK, Main.TEAM_MATE, 0),
    SHOOT(Side.ATTACK, Main.NOTHING, 0),
    HOLD(Side.ATTACK, Main.NOTHING, 0),
    GUARD(Side.DEFENCE, Main.OPPONENT, 0, "gap"),
    CLOSE_OUT(Side.DEFENCE, Main.OPPONENT, 5.5),
    OVER(Side.DEFENCE, Main.OPPONENT, 0),
    UNDER(Side.DEFENCE, Main.OPPONENT, 0),
    SWITCH(Side.DEFENCE, Main.TEAM_MATE, 0),
    HEDGE(Side.DEFENCE, Main.OPPONENT, 5.0, "lasting"),
    BLITZ(Side.DEFENCE, Main.OPPONENT, 5.0, "lasting"),
    DROP(Side.DEFENCE, Main.OPPONENT, 3.5, "lasting"),
    SAG(Side.DEFENCE, Main.OPPONENT, 0, "gap");

    /** Who may do it. */
    enum Side {
        ATTACK,
        DEFENCE
    }

    /** What stands behind the verb's colon. */
    enum Main {
        SPOT,
        TEAM_MATE,
        OPPONENT,
        NOTHING
    }

    private final Side side;
    private final Main main;
    private final double usualPace;
    private final Set<String> settings;

    Verb(Side side, Main main, double usualPace, String... settings) {
        this.side = side;
        this.main = main;
        this.usualPace = usualPace;
        this.settings = new TreeSet<>(List.of(settings));
    }

    Side side() {
        return side;
    }

    Main main() {
        return main;
    }

    /** Metres a second where the step names none. */
    double usualPace() {
        return usualPace;
    }

    /** What kinds the trade tells apart. */
    List<String> kinds() {
        return switch (this) {
            case SCREEN ->
                List.of(
                        "ball screen",
                        "handoff screen",
                        "drag",
                        "down screen",
                        "pin-down",
                        "back screen",
                        "flare screen",
                        "cross screen",
                        "shuffle screen",
                        "staggered screen",
                        "double screen",
                        "elevator screen");
            case CUT -> List.of("backdoor", "curl", "straight", "fade");
            default -> List.of();
        };
    }

    Set<String> settings() {
        return settings;
    }

    /** As it stands in a file. */
    String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static Optional<Verb> of(String word) {
        return Arrays.stream(values()).filter(v -> v.word().equals(word)).findFirst();
    }

    static String words() {
        return String.join(", ", Arrays.stream(values()).map(Verb::word).toList());
    }
}
