package floorgauge.app.store;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * A member of the team.
 *
 * @param id never shown
 * @param name as the analyst wrote it
 * @param number on the jersey; empty for none
 * @param squad the practice squad, in the team's words; may be blank
 * @param position in the team's words; may be blank
 * @param active whether still with the team
 */
public record Player(String id, String name, OptionalInt number, String squad, String position, boolean active) {

    /** Longest name kept. */
    public static final int LONGEST_NAME = 80;

    private static final int LONGEST_WORD = 40;

    public Player {
        Objects.requireNonNull(id, "id");
        name = name.strip();
        squad = squad.strip();
        position = position.strip();
        if (name.isEmpty() || name.length() > LONGEST_NAME) {
            throw new IllegalArgumentException("a name has 1 to " + LONGEST_NAME + " characters");
        }
        if (squad.length() > LONGEST_WORD || position.length() > LONGEST_WORD) {
            throw new IllegalArgumentException("squad and position have at most " + LONGEST_WORD + " characters");
        }
        if (number.isPresent() && (number.getAsInt() < 0 || number.getAsInt() > 99)) {
            throw new IllegalArgumentException("a jersey number lies in 0 to 99: " + number.getAsInt());
        }
    }

    /** Number and name, such as {@code 12 Noor Hadley}. */
    public String called() {
        return number.isPresent() ? number.getAsInt() + " " + name : name;
    }
}
