package floorgauge.app.export;

import floorgauge.app.sheet.PlayerNames;
import floorgauge.events.finding.PossessionFindings;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A film and those of its findings that are exported.
 *
 * @param film which
 * @param findings in order of possession, then of start
 * @param names who the players are, as far as someone has said so
 */
public record FilmChoice(MeasuredFolder film, List<ChosenFinding> findings, PlayerNames names) {

    public FilmChoice {
        Objects.requireNonNull(film, "film");
        Objects.requireNonNull(names, "names");
        findings = List.copyOf(findings);
    }

    /** Says which findings of a film are wanted. */
    @FunctionalInterface
    public interface Wanted {
        boolean test(MeasuredFolder film, ChosenFinding finding);
    }

    /** Chooses, with nobody named. */
    public static FilmChoice of(MeasuredFolder film, Wanted wanted) {
        return of(film, PlayerNames.none(), wanted);
    }

    /** Chooses; sentences have names in them where they are known. */
    public static FilmChoice of(MeasuredFolder film, PlayerNames names, Wanted wanted) {
        String sha256 = film.findings().film().sha256();
        List<ChosenFinding> chosen = new ArrayList<>();
        int number = 0;
        for (PossessionFindings possession : film.findings().findings().possessions()) {
            for (var finding : possession.findings()) {
                number++;
                ChosenFinding one =
                        new ChosenFinding(number, possession.possession().number(), finding);
                if (wanted.test(film, one)) {
                    chosen.add(one.saying(names.in(sha256, finding.sentence())));
                }
            }
        }
        return new FilmChoice(film, chosen, names);
    }
}
