package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.scene.Person;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;

/** Who has the ball while a scenario is played: dribbles, passes with a wind-up and a flight, handoffs, a shot. */
final class BallHandling {

    static final double WIND_UP_SECONDS = 0.26;
    static final double SHOT_SECONDS = 0.75;
    static final double SHOT_RELEASE_SECONDS = 0.55;

    private static final double PASS_METRES_PER_SECOND = 9;
    private static final double SHORTEST_FLIGHT_SECONDS = 0.22;
    private static final double HANDOFF_METRES = 0.95;
    /** With a ball to dribble one starts less hard: this project's own choice. */
    private static final double DRIBBLER_EFFORT = 0.75;

    private static final double DRIBBLING_METRES_PER_SECOND = 0.7;

    /** A body's radius and the ball's, and a hand's breadth. */
    private static final double LANE_METRES = 0.45;

    private static final double LANE_STEP = 0.05;

    private final Floor floor;
    private final List<Span> spans = new ArrayList<>();
    private final Map<String, Double> ended = new HashMap<>();
    private Span current;
    private Step act;
    private Optional<Role> thief = Optional.empty();
    private double actSeconds;
    private double arrivalSeconds;
    private FloorVector releasedAt = FloorVector.ZERO;

    BallHandling(Scenario scenario, Floor floor) {
        this.floor = floor;
        this.current = new Span(Control.Kind.HELD, 0, scenario.ball(), Optional.empty());
        floor.ball(floor.mover(scenario.ball()).position(), Optional.of(scenario.ball()));
    }

    private record Span(Control.Kind kind, double from, Role who, Optional<Role> to) {}

    /** Whether the player of a ball step has the ball and nothing else to do with it. */
    boolean ready(Step step) {
        return act == null && floor.holder().filter(step.who()::equals).isPresent();
    }

    void begin(Step step) {
        act = step;
        actSeconds = floor.time();
        if (step.verb() == Verb.SHOOT) {
            floor.goal(step.who(), new Stand(stopping(floor.mover(step.who()))));
        }
    }

    private static FloorVector stopping(Mover mover) {
        return mover.position().plus(mover.velocity().times(0.25));
    }

    /** The pass just begun will be picked off by a defender. */
    void pickedOffBy(Role defender) {
        thief = Optional.of(defender);
    }

    /** The ball step in progress: a pass until it is received. */
    Optional<Step> act() {
        return Optional.ofNullable(act);
    }

    double actSeconds() {
        return actSeconds;
    }

    Control.Kind kind() {
        return current.kind;
    }

    /** For how long the ball has been as it is. */
    double heldSeconds() {
        return floor.time() - current.from;
    }

    /** When a pass in flight will be received. */
    double arrivalSeconds() {
        return arrivalSeconds;
    }

    Map<String, Double> ended() {
        return ended;
    }

    void tick() {
        double time = floor.time();
        switch (current.kind) {
            case HELD, DRIBBLED -> {
                if (act != null) {
                    progress(time);
                }
                if (current.kind == Control.Kind.HELD || current.kind == Control.Kind.DRIBBLED) {
                    dribbleOrHold(time);
                    floor.ball(floor.mover(current.who).position(), Optional.of(current.who));
                }
            }
            case PASS -> fly(time);
            case SHOT -> {
                if (time >= arrivalSeconds) {
                    change(Control.Kind.LOOSE, time, current.who, Optional.empty());
                }
                floor.ball(floor.rim(), Optional.empty());
            }
            case LOOSE -> floor.ball(floor.rim(), Optional.empty());
        }
    }

    private void progress(double time) {
        double since = time - actSeconds;
        Mover self = floor.mover(act.who());
        switch (act.verb()) {
            case PASS -> {
                if (since >= WIND_UP_SECONDS) {
                    release(time, self);
                }
            }
            case HANDOFF -> {
                Role mate = act.other().orElseThrow();
                if (floor.mover(mate).position().distanceTo(self.position()) < HANDOFF_METRES) {
                    ended.put(act.label(), time);
                    act = null;
                    change(Control.Kind.HELD, time, mate, Optional.empty());
                }
            }
            default -> {
                if (since >= SHOT_RELEASE_SECONDS) {
                    ended.put(act.label(), time);
                    double distance = floor.rim().distanceTo(self.position());
                    arrivalSeconds = time + BallCourse.shotSeconds(distance, BallCourse.shotHeight(self.state()), 3.05);
                    change(Control.Kind.SHOT, time, act.who(), Optional.empty());
                }
            }
        }
    }

    /** Flight to where the receiver will be, at the speed of a chest pass. */
    private void release(double time, Mover self) {
        Role to = thief.orElse(act.other().orElseThrow());
        Mover receiver = floor.mover(to);
        double flight = SHORTEST_FLIGHT_SECONDS;
        for (int i = 0; i < 5; i++) {
            FloorVector there = receiver.position().plus(receiver.velocity().times(flight));
            flight =
                    Math.max(SHORTEST_FLIGHT_SECONDS, (there.distanceTo(self.position()) - 1) / PASS_METRES_PER_SECOND);
        }
        arrivalSeconds = time + flight;
        releasedAt = self.position();
        change(Control.Kind.PASS, time, act.who(), Optional.of(to));
        floor.ball(releasedAt, Optional.empty());
    }

    /** Whether a pass begun now would meet somebody on its way, if everybody goes on as he does. */
    static boolean wouldHit(Floor floor, Role passer, Role receiver) {
        FloorVector from = ahead(floor.mover(passer), WIND_UP_SECONDS);
        double flight = Math.max(
                SHORTEST_FLIGHT_SECONDS,
                (ahead(floor.mover(receiver), WIND_UP_SECONDS).distanceTo(from) - 1) / PASS_METRES_PER_SECOND);
        FloorVector way = ahead(floor.mover(receiver), WIND_UP_SECONDS + flight).minus(from);
        for (Role other : floor.movers().keySet()) {
            if (other.equals(passer) || other.equals(receiver)) {
                continue;
            }
            for (double share = 0; share <= 1; share += LANE_STEP) {
                FloorVector body = ahead(floor.mover(other), WIND_UP_SECONDS + share * flight);
                if (from.plus(way.times(share)).distanceTo(body) < LANE_METRES) {
                    return true;
                }
            }
        }
        return false;
    }

    private static FloorVector ahead(Mover mover, double seconds) {
        return mover.position().plus(mover.velocity().times(seconds));
    }

    private void fly(double time) {
        Role to = current.to.orElseThrow();
        if (time >= arrivalSeconds) {
            if (thief.isEmpty()) {
                ended.put(act.label(), time);
            }
            act = null;
            change(Control.Kind.HELD, time, to, Optional.empty());
            floor.ball(floor.mover(to).position(), Optional.of(to));
            return;
        }
        double share = (time - current.from) / (arrivalSeconds - current.from);
        FloorVector there = floor.mover(to).position();
        floor.ball(releasedAt.plus(there.minus(releasedAt).times(share)), Optional.empty());
    }

    /** A dribble stays alive until the ball is passed or shot, or the player is to hold it: nobody dribbles twice. */
    private void dribbleOrHold(double time) {
        Mover self = floor.mover(current.who);
        boolean moves = self.velocity().length() > DRIBBLING_METRES_PER_SECOND;
        boolean ballAct = act != null && act.who().equals(current.who);
        boolean sinceCatch = time - current.from > 0.35;
        boolean travels = floor.goal(current.who) instanceof Travel travel
                && !travel.reached()
                && (travel.isDribble() || sinceCatch);
        boolean live = current.kind == Control.Kind.DRIBBLED && !(floor.goal(current.who) instanceof Stand);
        boolean dribbles = live || (travels && moves);
        Control.Kind wanted = dribbles && !ballAct ? Control.Kind.DRIBBLED : Control.Kind.HELD;
        self.effort(current.kind == Control.Kind.DRIBBLED ? DRIBBLER_EFFORT : 1);
        if (wanted != current.kind && (sinceCatch || wanted == Control.Kind.DRIBBLED || ballAct)) {
            change(wanted, time, current.who, Optional.empty());
        }
    }

    private void change(Control.Kind kind, double time, Role who, Optional<Role> to) {
        spans.add(current);
        current = new Span(kind, time, who, to);
    }

    void finish() {
        spans.add(current);
    }

    /** All spans with ids for roles; call after {@link #finish}. */
    List<Control> controls(SortedMap<Role, Person> cast) {
        List<Control> controls = new ArrayList<>();
        for (int i = 0; i < spans.size(); i++) {
            Span span = spans.get(i);
            double to = i + 1 < spans.size() ? spans.get(i + 1).from : Math.max(floor.time(), arrivalIfFlying(span));
            controls.add(new Control(
                    span.kind,
                    span.from,
                    to,
                    cast.get(span.who).id(),
                    span.to.map(r -> OptionalInt.of(cast.get(r).id())).orElse(OptionalInt.empty())));
        }
        return controls;
    }

    private double arrivalIfFlying(Span span) {
        return span.kind == Control.Kind.PASS || span.kind == Control.Kind.SHOT ? arrivalSeconds : 0;
    }
}
