package floorgauge.events.play;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Team;
import floorgauge.events.motion.MotionSample;
import floorgauge.events.motion.UniformClock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A stretch of play in memory: one team attacks one rim. Everything in it is in the attack frame and indexed by ticks from
 * 0 to {@link #size()} - 1; the core, from {@link #coreFrom()} to before {@link #coreTo()}, is what the play is about, the
 * rest is margin. Immutable.
 */
public final class Play {

    private final long firstTick;
    private final int size;
    private final int coreFrom;
    private final int coreTo;
    private final Attack attack;
    private final double attackProbability;
    private final String ending;
    private final AttackGeometry geometry;
    private final List<PlayerPath> attackers;
    private final List<PlayerPath> defenders;
    private final int others;
    private final Optional<BallPath> ball;

    Play(PlayCutter.Stretch stretch, RuleSet rules) {
        List<FloorTick> ticks = stretch.ticks();
        this.firstTick = ticks.get(0).tick();
        this.size = ticks.size();
        this.coreFrom = stretch.coreFrom();
        this.coreTo = stretch.coreTo();
        this.attack = stretch.attack();
        this.attackProbability = stretch.attackProbability();
        this.ending = stretch.reason();
        this.geometry = new AttackGeometry(rules);
        List<PlayerPath> all = paths(ticks);
        this.attackers = all.stream().filter(p -> p.team() == attack.team()).toList();
        this.defenders = all.stream().filter(p -> p.team() == attack.defence()).toList();
        this.others = all.size() - attackers.size() - defenders.size();
        this.ball = ballPath(ticks);
    }

    private List<PlayerPath> paths(List<FloorTick> ticks) {
        Map<Integer, MotionSample[]> motions = new TreeMap<>();
        Map<Integer, BodyTick[]> bodies = new TreeMap<>();
        Map<Integer, PlayerTick> latest = new TreeMap<>();
        for (int i = 0; i < size; i++) {
            for (PlayerTick player : ticks.get(i).players()) {
                motions.computeIfAbsent(player.trackId(), id -> new MotionSample[size])[i] = turned(player.motion());
                bodies.computeIfAbsent(player.trackId(), id -> new BodyTick[size])[i] = turned(player.body());
                latest.put(player.trackId(), player);
            }
        }
        List<PlayerPath> paths = new ArrayList<>();
        motions.forEach((id, motion) -> paths.add(
                new PlayerPath(id, latest.get(id).team(), latest.get(id).teamProbability(), motion, bodies.get(id))));
        return paths;
    }

    private Optional<BallPath> ballPath(List<FloorTick> ticks) {
        MotionSample[] motion = new MotionSample[size];
        double[] height = new double[size];
        int[] heldBy = new int[size];
        boolean any = false;
        for (int i = 0; i < size; i++) {
            height[i] = Double.NaN;
            Optional<BallTick> here = ticks.get(i).ball();
            if (here.isPresent()) {
                any = true;
                motion[i] = turned(here.get().motion());
                height[i] = here.get().heightMetres();
                heldBy[i] = here.get().heldBy();
            }
        }
        return any ? Optional.of(new BallPath(motion, height, heldBy)) : Optional.empty();
    }

    private MotionSample turned(MotionSample motion) {
        return attack.end() == CourtEnd.POSITIVE_X ? motion : motion.turnedHalf();
    }

    private BodyTick turned(BodyTick body) {
        if (attack.end() == CourtEnd.POSITIVE_X || Double.isNaN(body.facingRadians())) {
            return body;
        }
        double turned = body.facingRadians() + (body.facingRadians() > 0 ? -Math.PI : Math.PI);
        return new BodyTick(turned, body.facingErrorRadians(), body.stance(), body.planted());
    }

    public int size() {
        return size;
    }

    public int coreFrom() {
        return coreFrom;
    }

    public int coreTo() {
        return coreTo;
    }

    /** Whether an index lies in the core. */
    public boolean inCore(int i) {
        return i >= coreFrom && i < coreTo;
    }

    /** Presentation time of an index, seconds. */
    public double time(int i) {
        return UniformClock.seconds(firstTick + i);
    }

    /** The index nearest to a presentation time, held within the play. */
    public int indexAt(double seconds) {
        return clamp((int) (UniformClock.nearest(seconds) - firstTick));
    }

    /** An index held within the play. */
    public int clamp(int i) {
        return Math.max(0, Math.min(size - 1, i));
    }

    public Team attackingTeam() {
        return attack.team();
    }

    public CourtEnd end() {
        return attack.end();
    }

    /** Probability that the attacking team and end are right. */
    public double attackProbability() {
        return attackProbability;
    }

    /** Why the core ends, in words. */
    public String ending() {
        return ending;
    }

    public AttackGeometry geometry() {
        return geometry;
    }

    /** In order of id. */
    public List<PlayerPath> attackers() {
        return attackers;
    }

    /** In order of id. */
    public List<PlayerPath> defenders() {
        return defenders;
    }

    /** How many tracks belong to neither team. */
    public int others() {
        return others;
    }

    /** Empty where the ball was not seen. */
    public Optional<BallPath> ball() {
        return ball;
    }

    /** A place of the attack frame in the court frame. */
    public FloorPoint toCourt(double x, double y) {
        FloorPoint p = new FloorPoint(x, y);
        return attack.end() == CourtEnd.POSITIVE_X ? p : p.turnedHalf();
    }

    /** An estimate of the attack frame in the court frame. */
    public FloorEstimate toCourt(FloorEstimate estimate) {
        return attack.end() == CourtEnd.POSITIVE_X ? estimate : estimate.turnedHalf();
    }
}
