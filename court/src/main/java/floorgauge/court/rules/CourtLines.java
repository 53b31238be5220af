package floorgauge.court.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The painted lines under the names that a person marks them by, which speak as those of {@link CourtPoints} do: left and
 * right ends, near and far sides.
 */
public final class CourtLines {

    private CourtLines() {}

    /** The name of a painted line in a points file. */
    public static String nameOf(PaintedLine line) {
        String name = line.name();
        if (name.startsWith("negative-end-")) {
            name = "left-" + name.substring("negative-end-".length());
        } else if (name.startsWith("positive-end-")) {
            name = "right-" + name.substring("positive-end-".length());
        }
        if (name.endsWith("-negative")) {
            return name.substring(0, name.length() - "negative".length()) + "near";
        }
        return name.endsWith("-positive") ? name.substring(0, name.length() - "positive".length()) + "far" : name;
    }

    /** Every painted line of a court, in order of name. */
    public static List<PaintedLine> of(RuleSet rules) {
        return rules.paintedLines().stream()
                .sorted(Comparator.comparing(CourtLines::nameOf))
                .toList();
    }

    /** The line of this name. */
    public static Optional<PaintedLine> named(RuleSet rules, String name) {
        return of(rules).stream().filter(line -> nameOf(line).equals(name)).findFirst();
    }

    /** The known name that is fewest changes of a letter away from this one, if any is near. */
    public static Optional<String> nearestName(RuleSet rules, String name) {
        return CourtPoints.nearest(of(rules).stream().map(CourtLines::nameOf).toList(), name);
    }
}
