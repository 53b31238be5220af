package floorgauge.events.play;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.Team;
import floorgauge.events.motion.MotionSample;
import floorgauge.events.statistics.GaussianDisc;

/** One player through a play. */
public final class PlayerPath extends FloorPath {

    private final int trackId;
    private final Team team;
    private final double teamProbability;
    private final double[] facing;
    private final double[] facingError;
    private final double[] stance;
    private final double[] planted;
    private final int first;
    private final int last;

    PlayerPath(int trackId, Team team, double teamProbability, MotionSample[] motion, BodyTick[] bodies) {
        super(motion);
        this.trackId = trackId;
        this.team = team;
        this.teamProbability = teamProbability;
        int n = motion.length;
        facing = new double[n];
        facingError = new double[n];
        stance = new double[n];
        planted = new double[n];
        int from = -1;
        int to = -1;
        for (int i = 0; i < n; i++) {
            BodyTick body = bodies[i] == null ? BodyTick.UNSEEN : bodies[i];
            facing[i] = body.facingRadians();
            facingError[i] = body.facingErrorRadians();
            stance[i] = body.stance();
            planted[i] = body.planted();
            if (motion[i] != null) {
                from = from < 0 ? i : from;
                to = i;
            }
        }
        first = from;
        last = to;
    }

    public int trackId() {
        return trackId;
    }

    public Team team() {
        return team;
    }

    public double teamProbability() {
        return teamProbability;
    }

    /** First index at which the player is seen; -1 where never. */
    public int first() {
        return first;
    }

    /** Last index at which the player is seen; -1 where never. */
    public int last() {
        return last;
    }

    /** Standard error of the speed, m/s. */
    public double speedError(int i) {
        double speed = speed(i);
        FloorCovariance c = velocityCovariance(i);
        return speed > 1e-9 ? Math.sqrt(c.varianceAlong(vx(i), vy(i))) : c.standardErrorMetres();
    }

    /** Probability that the player is no faster than a speed, m/s. */
    public double slowerThan(double speed, int i) {
        return GaussianDisc.within(vx(i), vy(i), velocityCovariance(i), speed);
    }

    /** Where the front of the body points in the attack frame, radians; NaN where it was not seen. */
    public double facing(int i) {
        return facing[i];
    }

    /** Standard error of the facing, radians; NaN where it was not seen. */
    public double facingError(int i) {
        return facingError[i];
    }

    /** Ankle distance over shoulder width; NaN where it was not seen. */
    public double stance(int i) {
        return stance[i];
    }

    /** Probability that a foot is at rest; NaN where it was not seen. */
    public double planted(int i) {
        return planted[i];
    }

    /** Standard error of the distance to another player, metres; the two errors are taken to be independent. */
    public double distanceError(PlayerPath other, int i) {
        double dx = x(i) - other.x(i);
        double dy = y(i) - other.y(i);
        FloorCovariance sum = covariance(i).plus(other.covariance(i));
        return Math.hypot(dx, dy) > 1e-9 ? Math.sqrt(sum.varianceAlong(dx, dy)) : sum.standardErrorMetres();
    }

    /** Probability that another player is within a distance. */
    public double within(double distance, PlayerPath other, int i) {
        return GaussianDisc.within(
                x(i) - other.x(i), y(i) - other.y(i), covariance(i).plus(other.covariance(i)), distance);
    }

    /** The position in the attack frame. */
    public FloorEstimate estimate(int i) {
        return new FloorEstimate(new FloorPoint(x(i), y(i)), covariance(i));
    }
}
