package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;

/**
 * The small moves of people who play but have nothing particular to do: every second or two a few steps to another place nearby.
 * Which places, and when, follows from the seed and the time alone, so that all versions of a scenario share them.
 */
final class Restlessness {

    private static final double SHORTEST_BEAT_SECONDS = 1.0;
    private static final double BEAT_RANGE_SECONDS = 0.7;
    private static final double SLOWEST_METRES_PER_SECOND = 1.1;
    private static final double PACE_RANGE_METRES_PER_SECOND = 1.6;

    private final Variation variation;
    private final Map<Role, double[]> beats = new HashMap<>();
    private final Map<Role, Map<Long, Move>> moves = new HashMap<>();

    Restlessness(Variation variation) {
        this.variation = variation;
    }

    /**
     * A few steps.
     *
     * @param offset where to, in a disc of radius 1 about the place that is kept
     * @param paceMetresPerSecond how fast
     */
    record Move(FloorVector offset, double paceMetresPerSecond) {}

    /** What a player is about at a time. */
    Move move(Role role, double seconds) {
        double[] beat = beats.computeIfAbsent(role, r -> {
            Random random = variation.randomOfTake("beat of " + r);
            return new double[] {SHORTEST_BEAT_SECONDS + BEAT_RANGE_SECONDS * random.nextDouble(), random.nextDouble()};
        });
        long count = (long) Math.floor(seconds / beat[0] + beat[1]);
        return moves.computeIfAbsent(role, r -> new HashMap<>()).computeIfAbsent(count, c -> draw(role, c));
    }

    private Move draw(Role role, long count) {
        Random random = variation.randomOfTake("move " + count + " of " + role);
        double radius = Math.sqrt(random.nextDouble());
        FloorVector offset =
                FloorVector.direction(2 * Math.PI * random.nextDouble()).times(radius);
        return new Move(offset, SLOWEST_METRES_PER_SECOND + PACE_RANGE_METRES_PER_SECOND * random.nextDouble());
    }
}
