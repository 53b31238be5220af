package floorgauge.events.play;

import floorgauge.court.track.Body;
import java.util.Optional;

/**
 * What was seen of a body nearest to a tick; NaN where a part was not seen.
 *
 * @param facingRadians from the court frame's x axis towards y
 * @param facingErrorRadians standard error of the facing
 * @param stance ankle distance over shoulder width
 * @param planted probability that a foot is at rest
 */
record BodyTick(double facingRadians, double facingErrorRadians, double stance, double planted) {

    static final BodyTick UNSEEN = new BodyTick(Double.NaN, Double.NaN, Double.NaN, Double.NaN);

    static BodyTick of(Optional<Body> seen) {
        if (seen.isEmpty()) {
            return UNSEEN;
        }
        Body body = seen.get();
        return new BodyTick(
                body.facing().map(f -> f.radians()).orElse(Double.NaN),
                body.facing().map(f -> f.standardErrorRadians()).orElse(Double.NaN),
                body.stanceOverShoulders().orElse(Double.NaN),
                body.plantedProbability().orElse(Double.NaN));
    }
}
