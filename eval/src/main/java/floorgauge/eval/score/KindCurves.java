package floorgauge.eval.score;

import floorgauge.eval.events.FlagScores;
import floorgauge.eval.events.ToleranceCurve;
import floorgauge.events.finding.FindingKind;
import java.util.Objects;

/**
 * The curves of one kind of finding over all films.
 *
 * @param kind what they are about
 * @param tolerance precision and recall over the tolerance in time
 * @param certainty precision and recall over the probability, and how far the probability can be believed
 */
public record KindCurves(FindingKind kind, ToleranceCurve tolerance, FlagScores certainty) {

    public KindCurves {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(tolerance, "tolerance");
        Objects.requireNonNull(certainty, "certainty");
    }
}
