package floorgauge.app.sheet;

import floorgauge.events.finding.Finding;
import floorgauge.events.finding.PossessionFindings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A finding with where it stands.
 *
 * @param film its film
 * @param possession its possession
 * @param number on its film, from 1
 * @param finding what was measured
 */
record WallFinding(WallFilm film, PossessionFindings possession, int number, Finding finding) {

    /** Flags first by what they cost, then in the order of films and of numbers. */
    static final Comparator<WallFinding> COSTLIEST = Comparator.comparingDouble(
            (WallFinding w) -> -w.finding().severity().map(s -> s.level()).orElse(0.0));

    /** All findings of films, in order. */
    static List<WallFinding> of(List<WallFilm> films) {
        List<WallFinding> all = new ArrayList<>();
        for (WallFilm film : films) {
            int number = 1;
            for (PossessionFindings possession : film.possessions()) {
                for (Finding finding : possession.findings()) {
                    all.add(new WallFinding(film, possession, number++, finding));
                }
            }
        }
        return all;
    }
}
