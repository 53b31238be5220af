package floorgauge.events.finding;

import java.util.OptionalDouble;

/**
 * How the attackers stood at one instant of the uniform 25 Hz clock. Areas and distances are from mean positions.
 *
 * @param timeSeconds presentation time
 * @param attackers how many were seen
 * @param leastNearestMetres smallest of the attackers' distances to their nearest team-mate; empty below two attackers
 * @param leastNearestStandardErrorMetres its standard error; empty where it is
 * @param meanNearestMetres mean of the attackers' distances to their nearest team-mate; empty below two attackers
 * @param hullSquareMetres area of their convex hull; 0 below three attackers
 * @param inLane attackers inside the lane
 * @param cornersFilled corners with an attacker, 0 to 2
 * @param drivingLaneMetres radius of the widest clear corridor from the ball to the rim, times two; empty without a ball
 * @param helpDistanceMetres from the line between ball and rim to the nearest off-ball defender; empty without a ball
 * @param duringAction whether a screen, handoff or cut was passing by
 */
public record SpacingSample(
        double timeSeconds,
        int attackers,
        OptionalDouble leastNearestMetres,
        OptionalDouble leastNearestStandardErrorMetres,
        OptionalDouble meanNearestMetres,
        double hullSquareMetres,
        int inLane,
        int cornersFilled,
        OptionalDouble drivingLaneMetres,
        OptionalDouble helpDistanceMetres,
        boolean duringAction) {}
