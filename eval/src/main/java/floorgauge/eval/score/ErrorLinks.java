package floorgauge.eval.score;

import floorgauge.eval.events.EventMark;
import java.util.Optional;

/** Where an error of one film can be looked at. */
@FunctionalInterface
public interface ErrorLinks {

    /**
     * @param timeSeconds when
     * @param finding what was found there; empty where nothing was
     * @return an address relative to the results folder, or where there is no page what opens the place
     */
    String to(double timeSeconds, Optional<EventMark> finding);
}
