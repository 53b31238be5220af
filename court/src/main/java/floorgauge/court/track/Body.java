package floorgauge.court.track;

import floorgauge.court.floor.FloorEstimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the pose says of the body on the floor. An empty part was not seen, which differs from any value.
 *
 * @param leftAnkle floor contact of the person's left foot, court frame
 * @param rightAnkle floor contact of the person's right foot, court frame
 * @param facing where the front of the body points
 * @param stanceOverShoulders distance between the ankles over shoulder width, both across the body, no unit
 * @param plantedProbability probability that at least one foot is on the floor and at rest, 0 to 1
 */
public record Body(
        Optional<FloorEstimate> leftAnkle,
        Optional<FloorEstimate> rightAnkle,
        Optional<Facing> facing,
        OptionalDouble stanceOverShoulders,
        OptionalDouble plantedProbability) {

    /** Nothing was seen. */
    public static final Body UNSEEN = new Body(
            Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    public Body {
        if (stanceOverShoulders.isPresent() && !(stanceOverShoulders.getAsDouble() >= 0)) {
            throw new IllegalArgumentException("stance over shoulders must be at least 0: " + stanceOverShoulders);
        }
        if (plantedProbability.isPresent()
                && !(plantedProbability.getAsDouble() >= 0 && plantedProbability.getAsDouble() <= 1)) {
            throw new IllegalArgumentException("a probability lies in 0 to 1: " + plantedProbability);
        }
    }
}
