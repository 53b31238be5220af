package floorgauge.eval.events;

import floorgauge.events.finding.FindingKind;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Which kinds of event films have. */
public final class KindsOf {

    private KindsOf() {}

    /** Every kind that is labelled or found in any of the films, in the order of the kinds. */
    public static Set<FindingKind> films(List<EventFilm> films) {
        EnumSet<FindingKind> kinds = EnumSet.noneOf(FindingKind.class);
        for (EventFilm film : films) {
            film.labels().forEach(m -> kinds.add(m.kind()));
            film.results().forEach(m -> kinds.add(m.kind()));
        }
        return kinds;
    }
}
