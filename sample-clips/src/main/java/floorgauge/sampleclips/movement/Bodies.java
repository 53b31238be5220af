package floorgauge.sampleclips.movement;

import java.util.ArrayList;
import java.util.List;

/**
 * Moves all bodies by one tick: wished velocities become accelerations within human limits, and no two bodies meet.
 *
 * <p>Two bodies a gap h apart may close at no more than sqrt(2 b h), the speed from which a braking of b stops them in time;
 * what is too much is taken off the two in proportion to how much each yields.
 */
public final class Bodies {

    /** Length of a tick. */
    public static final double TICK_SECONDS = 0.01;

    private static final double RESPONSE_SECONDS = 0.15;
    private static final double EFFORT = 4.6;
    private static final double LIMIT = HumanLimits.ACCELERATION_METRES_PER_SECOND_SQUARED - 0.1;
    private static final double CLOSING_BRAKE = 2.5;
    private static final double MARGIN_METRES = 0.025;
    private static final int ROUNDS = 8;

    private Bodies() {}

    /**
     * @param movers all bodies
     * @param wished their wished velocities, in the same order
     */
    public static void tick(List<Mover> movers, List<FloorVector> wished) {
        List<FloorVector> next = new ArrayList<>(movers.size());
        for (int i = 0; i < movers.size(); i++) {
            FloorVector now = movers.get(i).velocity();
            FloorVector change = wished.get(i).minus(now).times(TICK_SECONDS / RESPONSE_SECONDS);
            next.add(now.plus(change.atMost(movers.get(i).effort() * EFFORT * TICK_SECONDS)));
        }
        for (int round = 0; round < ROUNDS; round++) {
            keepApart(movers, next);
        }
        for (int i = 0; i < movers.size(); i++) {
            Mover mover = movers.get(i);
            FloorVector change = next.get(i)
                    .atMost(HumanLimits.SPEED_METRES_PER_SECOND)
                    .minus(mover.velocity())
                    .atMost(LIMIT * TICK_SECONDS);
            mover.advance(change.times(1 / TICK_SECONDS), TICK_SECONDS);
        }
    }

    private static void keepApart(List<Mover> movers, List<FloorVector> next) {
        for (int i = 0; i < movers.size(); i++) {
            for (int j = i + 1; j < movers.size(); j++) {
                FloorVector between =
                        movers.get(j).position().minus(movers.get(i).position());
                double gap = between.length() - 2 * HumanLimits.BODY_RADIUS_METRES - MARGIN_METRES;
                if (gap > 4) {
                    continue;
                }
                FloorVector normal = between.unit();
                double closing = next.get(i).minus(next.get(j)).dot(normal);
                double allowed = gap > 0 ? Math.sqrt(2 * CLOSING_BRAKE * gap) : 4 * gap;
                double excess = closing - allowed;
                if (excess > 0) {
                    double shareOfI = movers.get(i).yielding()
                            / (movers.get(i).yielding() + movers.get(j).yielding());
                    next.set(i, next.get(i).minus(normal.times(excess * shareOfI)));
                    next.set(j, next.get(j).plus(normal.times(excess * (1 - shareOfI))));
                }
            }
        }
    }
}
