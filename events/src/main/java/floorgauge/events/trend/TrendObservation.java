package floorgauge.events.trend;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Objects;

/**
 * One measured value.
 *
 * @param subject whose, and of what
 * @param possession a name of the possession that is unique over all films: values of one possession go together
 * @param day of the practice
 * @param value in the subject's unit
 * @param standardError of the value alone, in the subject's unit, at least 0; 0 where it is not known
 */
public record TrendObservation(
        TrendSubject subject, String possession, LocalDate day, double value, double standardError)
        implements Comparable<TrendObservation> {

    private static final Comparator<TrendObservation> ORDER = Comparator.comparing(TrendObservation::subject)
            .thenComparing(TrendObservation::day)
            .thenComparing(TrendObservation::possession)
            .thenComparing(TrendObservation::value)
            .thenComparing(TrendObservation::standardError);

    public TrendObservation {
        Objects.requireNonNull(subject, "subject");
        Objects.requireNonNull(possession, "possession");
        Objects.requireNonNull(day, "day");
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a value must be finite: " + value);
        }
        if (!(standardError >= 0 && Double.isFinite(standardError))) {
            throw new IllegalArgumentException("a standard error is at least 0: " + standardError);
        }
    }

    /** By subject, then day, possession and value: results do not depend on the order in which observations come. */
    @Override
    public int compareTo(TrendObservation other) {
        return ORDER.compare(this, other);
    }
}
