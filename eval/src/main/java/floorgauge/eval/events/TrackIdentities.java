package floorgauge.eval.events;

import floorgauge.eval.tracking.EventLog;
import floorgauge.eval.tracking.TrackingEvent;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * The bridge that labelled tracks give: at a time, the labelled person with whom the track was matched nearest in time, within
 * a second.
 */
public final class TrackIdentities implements Identities {

    private static final double FARTHEST_SECONDS = 1.0;

    private final Map<Integer, NavigableMap<Double, Integer>> personByTrack = new HashMap<>();

    /** @param log of a matching of the result's tracks against labelled tracks */
    public TrackIdentities(EventLog log) {
        log.events().filter(e -> e.kind().paired()).forEach(this::add);
    }

    private void add(TrackingEvent event) {
        personByTrack
                .computeIfAbsent(event.resultId().getAsInt(), t -> new TreeMap<>())
                .put(event.timeSeconds(), event.truthId().getAsInt());
    }

    @Override
    public OptionalInt labelledPerson(int trackId, double timeSeconds) {
        NavigableMap<Double, Integer> people = personByTrack.getOrDefault(trackId, new TreeMap<>());
        Map.Entry<Double, Integer> before = people.floorEntry(timeSeconds);
        Map.Entry<Double, Integer> after = people.ceilingEntry(timeSeconds);
        double sinceBefore = before == null ? Double.POSITIVE_INFINITY : timeSeconds - before.getKey();
        double untilAfter = after == null ? Double.POSITIVE_INFINITY : after.getKey() - timeSeconds;
        if (Math.min(sinceBefore, untilAfter) > FARTHEST_SECONDS) {
            return OptionalInt.empty();
        }
        return OptionalInt.of(sinceBefore <= untilAfter ? before.getValue() : after.getValue());
    }
}
