package floorgauge.events.trend;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.Unit;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * Whose figure is followed, and which.
 *
 * @param who one player, or a pair such as screener and user in that order; names that stay the same from film to film
 * @param role what the first of them does
 * @param kind what kind of finding the figure stands in
 * @param figure the figure's name, such as {@code separation gained}
 * @param unit of the figure
 */
public record TrendSubject(List<String> who, Role role, FindingKind kind, String figure, Unit unit)
        implements Comparable<TrendSubject> {

    private static final Comparator<TrendSubject> ORDER = Comparator.comparing(TrendSubject::kind)
            .thenComparing(TrendSubject::figure)
            .thenComparing(TrendSubject::unit)
            .thenComparing(TrendSubject::role)
            .thenComparing(s -> s.who.size())
            .thenComparing(s -> String.join("\n", s.who));

    public TrendSubject {
        who = List.copyOf(who);
        Objects.requireNonNull(role, "role");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(figure, "figure");
        Objects.requireNonNull(unit, "unit");
        if (who.isEmpty() || who.stream().anyMatch(String::isBlank)) {
            throw new IllegalArgumentException("a trend is somebody's: " + who);
        }
    }

    /** What is shared by all whose figures may be compared: the same role, kind, figure and number of players. */
    TrendSubject group() {
        return new TrendSubject(who.stream().map(w -> "team").toList(), role, kind, figure, unit);
    }

    /** By kind, figure, role, then name. */
    @Override
    public int compareTo(TrendSubject other) {
        return ORDER.compare(this, other);
    }
}
