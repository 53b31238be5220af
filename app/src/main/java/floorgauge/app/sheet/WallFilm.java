package floorgauge.app.sheet;

import floorgauge.app.result.FilmSource;
import floorgauge.court.rules.RuleSet;
import floorgauge.events.finding.PossessionFindings;
import java.util.List;
import java.util.Objects;

/**
 * A measured film as pages for the wall need it.
 *
 * @param film which
 * @param rules its court
 * @param possessions what was measured, with everyone's trails
 */
public record WallFilm(FilmSource film, RuleSet rules, List<PossessionFindings> possessions) {

    public WallFilm {
        Objects.requireNonNull(film, "film");
        Objects.requireNonNull(rules, "rules");
        possessions = List.copyOf(possessions);
    }
}
