package floorgauge.eval.tracking;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * One entry of an {@link EventLog}.
 *
 * @param kind what happened
 * @param frame index of the frame in the film, from 0
 * @param timeSeconds presentation time
 * @param truthId empty for a false alarm
 * @param resultId empty for a miss
 * @param similarity of the pair, 0 to 1; 0 where there is no pair
 */
public record TrackingEvent(
        TrackingEventKind kind,
        long frame,
        double timeSeconds,
        OptionalInt truthId,
        OptionalInt resultId,
        double similarity) {

    public TrackingEvent {
        Objects.requireNonNull(kind, "kind");
        boolean wantsTruth = kind != TrackingEventKind.FALSE_ALARM;
        boolean wantsResult = kind != TrackingEventKind.MISS;
        if (truthId.isPresent() != wantsTruth || resultId.isPresent() != wantsResult) {
            throw new IllegalArgumentException(kind + " with truth " + truthId + " and result " + resultId);
        }
    }
}
