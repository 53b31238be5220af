package floorgauge.eval.score;

import java.util.Comparator;
import java.util.Objects;

/**
 * What a figure of the score table is about.
 *
 * @param group the stage and, for events, the kind: tracks, events, screen, weak screen
 * @param name the measure's own name: F1, IDF1, onset error
 * @param unit of its value; empty for a share
 * @param better which way is better
 */
public record Measure(String group, String name, String unit, Better better) implements Comparable<Measure> {

    /** Which way is better. */
    public enum Better {
        HIGHER,
        LOWER,
        /** A bias: best at 0, told but not compared. */
        NEITHER
    }

    private static final Comparator<Measure> ORDER =
            Comparator.comparing(Measure::group).thenComparing(Measure::name).thenComparing(Measure::unit);

    public Measure {
        Objects.requireNonNull(group, "group");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(better, "better");
    }

    /** A share, of which more is better. */
    public static Measure share(String group, String name) {
        return new Measure(group, name, "", Better.HIGHER);
    }

    /** An error or a count, of which less is better. */
    public static Measure error(String group, String name, String unit) {
        return new Measure(group, name, unit, Better.LOWER);
    }

    /** Group and name, unique in a table. */
    public String key() {
        return group + ": " + name;
    }

    /** Whether an error row about this kind of event, or about tracks, counts in this measure. */
    boolean isAbout(String about) {
        return group.endsWith(", " + about) || group.equals(about + "s");
    }

    @Override
    public int compareTo(Measure other) {
        return ORDER.compare(this, other);
    }
}
