package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.input.LocatedValue;
import java.util.Optional;

/**
 * A player's place in a scenario: attackers are 1 to 5, the defender who starts on attacker n is xn.
 *
 * @param defends whether this is a defender
 * @param number 1 to 5
 */
record Role(boolean defends, int number) implements Comparable<Role> {

    Role {
        if (number < 1 || number > 5) {
            throw new IllegalArgumentException("a role is 1 to 5 or x1 to x5: " + number);
        }
    }

    static Role attacker(int number) {
        return new Role(false, number);
    }

    static Role defender(int number) {
        return new Role(true, number);
    }

    static Optional<Role> parse(String text) {
        return text.matches("x?[1-5]")
                ? Optional.of(new Role(text.startsWith("x"), text.charAt(text.length() - 1) - '0'))
                : Optional.empty();
    }

    static Role read(LocatedValue field) {
        return parse(field.text())
                .orElseThrow(() -> field.error(
                        "expected a player, 1 to 5 in attack or x1 to x5 in defence, found '" + field.text() + "'"));
    }

    @Override
    public int compareTo(Role other) {
        return defends == other.defends ? Integer.compare(number, other.number) : (defends ? 1 : -1);
    }

    @Override
    public String toString() {
        return (defends ? "x" : "") + number;
    }
}
