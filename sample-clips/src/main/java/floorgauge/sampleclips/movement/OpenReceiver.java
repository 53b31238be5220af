package floorgauge.sampleclips.movement;

import java.util.List;

/**
 * Whether a receiver is open: no defender near, the lane of a straight pass clear, and the receiver a threat. A lane is clear where no
 * defender can reach a point of it before the ball does: the ball flies at 9 m/s, a defender starts after 0.2 s, runs at 4.5 m/s
 * and reaches 0.6 m.
 */
public final class OpenReceiver {

    /** No defender is within this of an open receiver. */
    public static final double OPEN_METRES = 1.4;

    private static final double PASS_SPEED = 9;
    private static final double DEFENDER_REACTION = 0.2;
    private static final double DEFENDER_SPEED = 4.5;
    private static final double DEFENDER_REACH = 0.6;
    private static final double OUT_OF_HANDS_METRES = 0.5;
    private static final double STEP_METRES = 0.1;
    /** A receiver this near the rim is a threat, moving to it or not: all of the arcs lie within. */
    private static final double SHOOTING_RANGE = 7.5;

    private final FloorVector rim;

    /** @param rim under attack */
    public OpenReceiver(FloorVector rim) {
        this.rim = rim;
    }

    /**
     * @param ball where the ball is
     * @param receiver where the receiver is
     * @param defenders where they are
     */
    public boolean isOpen(FloorVector ball, FloorVector receiver, List<FloorVector> defenders) {
        return receiver.distanceTo(rim) <= SHOOTING_RANGE
                && defenders.stream().allMatch(d -> d.distanceTo(receiver) >= OPEN_METRES)
                && defenders.stream().noneMatch(d -> cutsOff(d, ball, receiver));
    }

    private static boolean cutsOff(FloorVector defender, FloorVector ball, FloorVector receiver) {
        FloorVector way = receiver.minus(ball);
        int points = Math.max(2, (int) Math.ceil(way.length() / STEP_METRES));
        for (int k = 0; k <= points; k++) {
            double share = (double) k / points;
            double ballSeconds = share * way.length() / PASS_SPEED;
            double run = Math.max(0, defender.distanceTo(ball.plus(way.times(share))) - DEFENDER_REACH);
            double defenderSeconds = run == 0 ? 0 : DEFENDER_REACTION + run / DEFENDER_SPEED;
            if (defenderSeconds <= ballSeconds && share * way.length() > OUT_OF_HANDS_METRES) {
                return true;
            }
        }
        return false;
    }
}
