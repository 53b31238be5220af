package floorgauge.eval.fit;

import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventMark;
import floorgauge.events.standards.Standards;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;

/**
 * A labelled film that can be measured anew under other standards.
 *
 * @param labelled its labels; what it holds of findings is not used
 * @param measure findings under given standards; the same standards always give the same findings
 */
public record FitFilm(EventFilm labelled, Function<Standards, List<EventMark>> measure) {

    public FitFilm {
        Objects.requireNonNull(labelled, "labelled");
        Objects.requireNonNull(measure, "measure");
    }
}
