package floorgauge.app.export;

import floorgauge.events.finding.PossessionFindings;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A film and those of its findings that are exported.
 *
 * @param film which
 * @param findings in order of possession, then of start
 */
public record FilmChoice(MeasuredFolder film, List<ChosenFinding> findings) {

    public FilmChoice {
        Objects.requireNonNull(film, "film");
        findings = List.copyOf(findings);
    }

    /** Says which findings of a film are wanted. */
    @FunctionalInterface
    public interface Wanted {
        boolean test(MeasuredFolder film, ChosenFinding finding);
    }

    /** Chooses. */
    public static FilmChoice of(MeasuredFolder film, Wanted wanted) {
        List<ChosenFinding> chosen = new ArrayList<>();
        int number = 0;
        for (PossessionFindings possession : film.findings().findings().possessions()) {
            for (var finding : possession.findings()) {
                number++;
                ChosenFinding one =
                        new ChosenFinding(number, possession.possession().number(), finding);
                if (wanted.test(film, one)) {
                    chosen.add(one);
                }
            }
        }
        return new FilmChoice(film, chosen);
    }
}
