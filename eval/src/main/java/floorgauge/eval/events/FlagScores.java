package floorgauge.eval.events;

import floorgauge.eval.statistics.PrecisionRecallCurve;
import floorgauge.eval.statistics.PrecisionRecallCurve.Candidate;
import floorgauge.eval.statistics.Ratios;
import floorgauge.eval.statistics.Reliability;
import java.util.ArrayList;
import java.util.List;

/**
 * How far a flag's probability can be believed.
 *
 * @param curve precision and recall as the probability from which flags are shown falls
 * @param reliability stated probability against the share that is real
 * @param falsePerHour flags without a label in an hour of film; NaN for no film
 */
public record FlagScores(PrecisionRecallCurve curve, Reliability reliability, double falsePerHour) {

    /** @param films each with flags of one kind, or of all */
    public static FlagScores of(List<EventFilm> films, EventTolerance tolerance) {
        List<Candidate> candidates = new ArrayList<>();
        long missed = 0;
        long falseAlarms = 0;
        double hours = 0;
        for (EventFilm film : films) {
            EventMatches matches = film.match(tolerance);
            matches.pairs().forEach(p -> candidates.add(new Candidate(p.result().probability(), true)));
            matches.falseAlarms().forEach(r -> candidates.add(new Candidate(r.probability(), false)));
            missed += matches.missed().size();
            falseAlarms += matches.falseAlarms().size();
            hours += film.hours();
        }
        return new FlagScores(
                PrecisionRecallCurve.of(candidates, missed),
                Reliability.of(candidates, Reliability.USUAL_BINS),
                Ratios.of(falseAlarms, hours));
    }
}
