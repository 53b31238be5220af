package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.Bodies;
import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.HumanLimits;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.OpenReceiver;
import floorgauge.sampleclips.movement.Recording;
import floorgauge.sampleclips.scene.Person;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Plays a scenario tick by tick: begins steps at their times, lets bodies follow their goals, moves the ball from hand to hand.
 *
 * <p>A version with faults is played after the sound one, whose times tell when a step that comes too late or too soon should
 * have begun.
 */
final class Choreographer {

    private static final double CHASE_METRES_PER_SECOND = 5.2;

    /** A rendition this near to what was asked for ends the search; one that is not within the other is not looked at further. */
    private static final double GOOD_ENOUGH = 0.06;

    private static final double TOO_FAR = 1.0;

    /** A fault that can't be seen is as bad as one that is off by this much. */
    private static final double UNSEEN_COST = 0.3;

    /** So is a pass that flies through somebody. */
    private static final double THROUGH_COST = 0.2;

    /** Bodies in a crowd give by so much. */
    private static final double PRESSED_METRES = 0.05;

    private static final double OVERTIME_SECONDS = 3;
    /** A ball that was picked off is held for a moment before it is dribbled away. */
    private static final double SECURED_SECONDS = 0.4;

    /** So long a screener waits for a user who does not come. */
    private static final double LONGEST_HELD_SECONDS = 1.5;
    /** So long a passer looks at a receiver who is not open. */
    private static final double LONGEST_LOOK_SECONDS = 0.9;

    private static final double LAST_STEP_SECONDS = 1;

    private final Scenario scenario;
    private final Variation variation;
    private final List<Fault> faults;
    private final Rendition rendition;
    private final Map<String, Double> fixedStarts = new HashMap<>();
    private final Map<String, Double> fixedEnds = new HashMap<>();
    private final Map<String, Double> started = new HashMap<>();
    private final Map<String, Double> ended = new HashMap<>();
    private final Map<String, Goal> pending = new HashMap<>();
    private final List<Role> thieves = new ArrayList<>();
    private final SortedMap<Role, Person> cast;
    private final Floor floor;
    private final BallHandling ball;
    private final BodyLanguage language;

    private Choreographer(Scenario scenario, Variation variation, List<Fault> faults, Rendition rendition) {
        this.rendition = rendition;
        this.scenario = scenario;
        this.variation = variation;
        this.faults = faults;
        this.cast = Casting.cast(scenario, variation);
        this.floor = floor();
        this.ball = new BallHandling(scenario, floor);
        this.language = new BodyLanguage(floor, ball);
    }

    /** @throws ScenarioException where the scenario can't be played as written */
    static PlayedScene play(Scenario scenario, String version, long seed) {
        return Takes.play(scenario, version, seed);
    }

    /**
     * A version from the take of this sound one.
     *
     * @throws ScenarioException where none of its renditions can be played
     */
    PlayedScene with(String version, long seed) {
        List<Fault> committed = scenario.versions().get(version);
        if (committed.isEmpty()) {
            return scene(version);
        }
        ScenarioException refused = null;
        PlayedScene best = null;
        double least = Double.MAX_VALUE;
        for (Rendition tried : Rendition.of(committed)) {
            Choreographer faulty = new Choreographer(scenario, variation, committed, tried);
            faulty.shiftStarts(this);
            try {
                faulty.run();
            } catch (ScenarioException e) {
                refused = refused == null ? e : refused;
                continue;
            }
            PlayedScene scene = faulty.scene(version);
            double error = faulty.error(scene, seed);
            if (error < least) {
                best = scene;
                least = error;
            }
            if (error < GOOD_ENOUGH) {
                break;
            }
        }
        if (best == null) {
            throw refused;
        }
        return best;
    }

    /** The version without a fault, in one take. */
    static Choreographer playSound(Scenario scenario, Variation variation) {
        Choreographer sound = new Choreographer(scenario, variation, List.of(), new Rendition(FloorVector.ZERO, 1));
        sound.run();
        return sound;
    }

    /** How far a rendition is from the version that was asked for: in size, whether its faults can be seen, in passes. */
    private double error(PlayedScene scene, long seed) {
        double error = missError() + rendition.departure();
        return error < TOO_FAR
                ? error
                        + UNSEEN_COST * FaultShown.unseen(faults, scene, seed)
                        + THROUGH_COST * PassLanes.throughBodies(scene)
                : error + faults.size();
    }

    /**
     * How far the least gap of screener and defender lies from the fault's size. Where a defender goes depends on where the screener
     * stands, so the place that gives the size is found by playing several.
     */
    private double missError() {
        double error = 0;
        for (Fault fault : faults) {
            if (fault instanceof Fault.ScreenMisses misses) {
                Step step = scenario.steps().stream()
                        .filter(s -> s.label().equals(misses.step()))
                        .findFirst()
                        .orElseThrow();
                error += MissedBy.of(floor, step, ended.getOrDefault(step.label(), floor.time()))
                        .error(misses.byMetres());
            }
        }
        return error;
    }

    private Floor floor() {
        FloorVector rim = FloorVector.of(scenario.rules().rim(scenario.end()));
        SortedMap<Role, Mover> movers = new TreeMap<>();
        FloorVector ballAt =
                place(variation.start(scenario.ball(), scenario.attack().get(scenario.ball())));
        cast.forEach((role, person) -> {
            FloorVector attacker = place(variation.start(
                    Role.attacker(role.number()), scenario.attack().get(Role.attacker(role.number()))));
            FloorVector at = attacker;
            if (role.defends()) {
                Spot own = scenario.defence().get(role);
                FloorVector goalSide = rim.minus(attacker).unit().times(1.05);
                FloorVector ballSide = ballAt.minus(attacker).unit().times(0.25);
                at = own != null
                        ? place(variation.start(role, own))
                        : attacker.plus(goalSide).plus(ballSide);
            }
            FloorVector looksAt = role.defends() ? attacker : rim;
            movers.put(role, new Mover(person, at, looksAt.minus(at).radians()));
        });
        FloorVector corner = new FloorVector(
                scenario.rules().lengthMetres() / 2, scenario.rules().widthMetres() / 2);
        Floor made = new Floor(rim, corner, movers, new Restlessness(variation));
        movers.forEach((role, mover) -> {
            if (role.defends()) {
                made.man(role, Role.attacker(role.number()));
                made.goal(role, guard(role, OptionalDouble.empty(), Guard.Way.CHASE));
            } else {
                made.goal(role, KeepAbout.at(role, mover.position()));
            }
        });
        return made;
    }

    private FloorVector place(Spot spot) {
        return FloorVector.of(spot.onCourt(scenario.rules(), scenario.end()));
    }

    private FloorVector place(Step step, String what, Spot spot) {
        return place(variation.spot(what + " of " + step.label(), spot));
    }

    private static Guard guard(Role role, OptionalDouble gap, Guard.Way way) {
        return new Guard(role, gap, CHASE_METRES_PER_SECOND, way);
    }

    /** Steps that a fault moves begin at the sound version's time, moved; left-out ones end when they did there. */
    private void shiftStarts(Choreographer sound) {
        for (Fault fault : faults) {
            if (fault instanceof Fault.Late late) {
                fixedStarts.put(late.step(), sound.startOf(late.step()) + late.bySeconds() * rendition.scale());
            } else if (fault instanceof Fault.Early early) {
                fixedStarts.put(
                        early.step(), Math.max(0, sound.startOf(early.step()) - early.bySeconds() * rendition.scale()));
            } else if (fault instanceof Fault.LeftOut left) {
                fixedStarts.put(left.step(), sound.startOf(left.step()));
                fixedEnds.put(left.step(), sound.ended.getOrDefault(left.step(), sound.startOf(left.step())));
            }
        }
    }

    private double startOf(String label) {
        return started.get(label);
    }

    private void run() {
        while (floor.time() < scenario.durationSeconds() - 1e-9 || goesOn()) {
            beginSteps();
            drift();
            breakAway();
            floor.receiver(ball.act().flatMap(Step::other));
            List<FloorVector> wishes = new ArrayList<>();
            floor.movers().forEach((role, mover) -> wishes.add(floor.goal(role).wish(floor, mover)));
            language.apply();
            Bodies.tick(floor.everyone(), wishes);
            floor.record();
            ball.tick();
            endSteps();
        }
        ball.finish();
        if (faults.isEmpty()) {
            mustHaveBegun();
        }
        mustStayApart();
    }

    /** A scene goes on past its duration, for a while, until its last step has begun and had a moment. */
    private boolean goesOn() {
        double last = started.values().stream().mapToDouble(d -> d).max().orElse(0);
        boolean all = scenario.steps().stream().allMatch(s -> started.containsKey(s.label()));
        return floor.time() < (all ? last + LAST_STEP_SECONDS : scenario.durationSeconds() + OVERTIME_SECONDS) - 1e-9;
    }

    private void beginSteps() {
        for (Step step : scenario.steps()) {
            if (!started.containsKey(step.label()) && due(step) && floor.time() >= startTime(step) - 1e-9) {
                if (!leftOut(step) && mustWait(step)) {
                    continue;
                }
                started.put(step.label(), floor.time());
                if (!leftOut(step)) {
                    begin(step);
                }
            }
        }
    }

    /** For the ball, or for the user of a screen to be past before the screener leaves it. */
    private boolean mustWait(Step step) {
        if (ballAct(step.verb())) {
            return !ball.ready(step) || waitsForWindow(step) || waitsForLane(step);
        }
        boolean leaves = step.verb() == Verb.ROLL || step.verb() == Verb.POP;
        return leaves
                && floor.goal(step.who()) instanceof SetScreen screen
                && !screen.isPassed()
                && floor.time() < startTime(step) + LONGEST_HELD_SECONDS;
    }

    /** Who may throw a pass too late in another version throws it when its receiver is open, or after a while anyway. */
    private boolean waitsForWindow(Step step) {
        return scenario.holds(step.label())
                && !fixedStarts.containsKey(step.label())
                && floor.time() < startTime(step) + LONGEST_LOOK_SECONDS
                && !isOpen(step.other().orElseThrow());
    }

    /** A patient passer does not throw through somebody, but does not wait for ever. */
    private boolean waitsForLane(Step step) {
        return variation.patient()
                && step.verb() == Verb.PASS
                && !fixedStarts.containsKey(step.label())
                && floor.time() < startTime(step) + LONGEST_LOOK_SECONDS
                && BallHandling.wouldHit(floor, step.who(), step.other().orElseThrow());
    }

    private boolean isOpen(Role receiver) {
        Mover mover = floor.mover(receiver);
        List<FloorVector> defenders = floor.movers().entrySet().stream()
                .filter(e -> e.getKey().defends())
                .map(e -> e.getValue().position())
                .toList();
        return new OpenReceiver(floor.rim()).isOpen(floor.ball(), mover.position(), defenders);
    }

    private static boolean ballAct(Verb verb) {
        return verb == Verb.PASS || verb == Verb.HANDOFF || verb == Verb.SHOOT;
    }

    private boolean leftOut(Step step) {
        return fixedEnds.containsKey(step.label());
    }

    private boolean due(Step step) {
        if (fixedStarts.containsKey(step.label()) || step.start().base().isEmpty()) {
            return true;
        }
        String base = step.start().base().orElseThrow();
        return (step.start().fromItsStart() ? started : ended).containsKey(base);
    }

    private double startTime(Step step) {
        Double fixed = fixedStarts.get(step.label());
        if (fixed != null) {
            return fixed;
        }
        Step.Start start = step.start();
        double delay = variation.delay(step.label());
        if (start.base().isEmpty()) {
            return start.seconds() + delay;
        }
        return (start.fromItsStart() ? started : ended).get(start.base().orElseThrow()) + start.seconds() + delay;
    }

    private void begin(Step step) {
        Role who = step.who();
        Mover mover = floor.mover(who);
        switch (step.verb()) {
            case CUT, SPOT_UP, ROLL, POP, DRIBBLE -> {
                mover.yielding(1);
                give(
                        step,
                        new Travel(
                                who,
                                place(step, "to", step.to().orElseThrow()),
                                step.via().map(v -> place(step, "via", v)),
                                step.off(),
                                step.pace(),
                                step.verb() == Verb.DRIBBLE));
            }
            case SCREEN -> give(step, screen(step));
            case PASS, HANDOFF, SHOOT -> {
                ball.begin(step);
                if (faults.contains(new Fault.Stolen(step.label()))) {
                    steal(step);
                }
            }
            case HOLD -> {
                give(step, new Stand(mover.position()));
            }
            case GUARD, SAG, CLOSE_OUT -> {
                floor.man(who, step.other().orElseThrow());
                double gap = step.verb() == Verb.SAG ? 3 : 1.0;
                give(
                        step,
                        guard(
                                who,
                                step.gap().isPresent() || step.verb() == Verb.GUARD
                                        ? step.gap()
                                        : OptionalDouble.of(gap),
                                Guard.Way.CHASE));
                ended.put(step.label(), floor.time());
            }
            case OVER -> giveAndEnd(step, guard(who, OptionalDouble.empty(), Guard.Way.OVER));
            case UNDER -> giveAndEnd(step, guard(who, OptionalDouble.of(1.3), Guard.Way.UNDER));
            case SWITCH -> change(step);
            case HEDGE, BLITZ, DROP -> {
                double usual = step.verb() == Verb.HEDGE ? 1.0 : 2.2;
                double until = floor.time() + step.lasting().orElse(usual);
                Goal after = guard(who, OptionalDouble.empty(), Guard.Way.CHASE);
                giveAndEnd(step, new Coverage(step.verb(), step.other().orElseThrow(), step.pace(), until, after));
            }
        }
    }

    private void give(Step step, Goal goal) {
        floor.goal(step.who(), goal);
        pending.put(step.label(), goal);
    }

    private void giveAndEnd(Step step, Goal goal) {
        floor.goal(step.who(), goal);
        ended.put(step.label(), floor.time());
    }

    private SetScreen screen(Step step) {
        FloorVector miss = FloorVector.ZERO;
        double slide = 0;
        for (Fault fault : faults) {
            if (fault instanceof Fault.ScreenMisses f && f.step().equals(step.label())) {
                miss = rendition.amiss();
            } else if (fault instanceof Fault.ScreenerMoving f && f.step().equals(step.label())) {
                slide = f.metresPerSecond() * rendition.scale();
            }
        }
        Spot toward = step.toward().or(step::at).orElseThrow();
        return new SetScreen(
                step.who(),
                step.forWhom().orElseThrow(),
                step.other().orElseThrow(),
                place(step, "toward", toward),
                step.at().map(a -> place(step, "at", a)),
                facing(step),
                step.pace(),
                miss,
                slide,
                hurried(step));
    }

    /** Whether the user of a screen leaves too soon in this version. */
    private boolean hurried(Step screen) {
        return faults.stream()
                .filter(Fault.Early.class::isInstance)
                .map(f -> ((Fault.Early) f).step())
                .anyMatch(label -> scenario.steps().stream()
                        .anyMatch(s -> s.label().equals(label)
                                && s.who().equals(screen.forWhom().orElseThrow())));
    }

    /** Degrees from the way to the rim, turned with the side of the floor that the seed chose. */
    private Optional<FloorVector> facing(Step step) {
        if (step.facingDegrees().isEmpty()) {
            return Optional.empty();
        }
        double turn = StrictMath.toRadians(step.facingDegrees().getAsDouble()) * (variation.mirrored() ? -1 : 1);
        FloorVector toRim = FloorVector.direction(scenario.end().sign() > 0 ? 0 : Math.PI);
        return Optional.of(toRim.turned(turn));
    }

    private void change(Step step) {
        Role other = step.other().orElseThrow();
        Role own = floor.man(step.who());
        floor.man(step.who(), floor.man(other));
        floor.man(other, own);
        floor.goal(other, guard(other, OptionalDouble.empty(), Guard.Way.CHASE));
        giveAndEnd(step, guard(step.who(), OptionalDouble.empty(), Guard.Way.CHASE));
    }

    /** The receiver's defender picks the pass off. */
    private void steal(Step pass) {
        Role receiver = pass.other().orElseThrow();
        Role thief = floor.movers().keySet().stream()
                .filter(r -> r.defends() && floor.man(r).equals(receiver))
                .findFirst()
                .orElse(Role.defender(receiver.number()));
        ball.pickedOffBy(thief);
        floor.goal(thief, new Intercept(receiver));
        thieves.add(thief);
    }

    /** A defender who has picked a pass off dribbles away. */
    private void breakAway() {
        for (Role thief : List.copyOf(thieves)) {
            if (floor.holder().filter(thief::equals).isPresent() && ball.heldSeconds() > SECURED_SECONDS) {
                FloorVector halfCourt = floor.mover(thief).position();
                FloorVector away = new FloorVector(-floor.rim().x() / 3, halfCourt.y() / 2);
                floor.goal(thief, new Travel(thief, away, Optional.empty(), Optional.empty(), 4.5, true));
                thieves.remove(thief);
            }
        }
    }

    private void drift() {
        for (Fault fault : faults) {
            if (fault instanceof Fault.Drift d
                    && floor.time() >= d.fromSeconds()
                    && !started.containsKey("drift of " + d.who())) {
                started.put("drift of " + d.who(), floor.time());
                floor.goal(d.who(), new DriftGoal(d.towards(), d.withinMetres(), rendition.scale()));
            } else if (fault instanceof Fault.Standing s) {
                floor.standing(floor.time() >= s.fromSeconds() && floor.time() < s.fromSeconds() + s.lastingSeconds());
            }
        }
    }

    private void endSteps() {
        pending.forEach((label, goal) -> {
            if (goal.reached()) {
                ended.putIfAbsent(label, floor.time());
            }
        });
        ball.ended().forEach(ended::putIfAbsent);
        fixedEnds.forEach((label, time) -> {
            if (floor.time() >= time) {
                ended.putIfAbsent(label, floor.time());
            }
        });
    }

    private void mustHaveBegun() {
        for (Step step : scenario.steps()) {
            if (!started.containsKey(step.label())) {
                String why =
                        step.start().base().filter(b -> !ended.containsKey(b)).isPresent()
                                ? "waits for '" + step.start().base().orElseThrow() + "', which does not end"
                                : ballAct(step.verb())
                                        ? "waits for the ball, which " + step.who() + " does not get"
                                        : "is too late";
                throw new ScenarioException(
                        scenario.file(),
                        step.line(),
                        "'" + step.label() + "' " + why + " within " + (scenario.durationSeconds() + OVERTIME_SECONDS)
                                + " s; expected a step that can be done");
            }
        }
    }

    private void mustStayApart() {
        List<Role> roles = List.copyOf(cast.keySet());
        for (int t = 0; t < floor.ticks().size(); t++) {
            var states = floor.ticks().get(t);
            for (int i = 0; i < states.size(); i++) {
                for (int j = i + 1; j < states.size(); j++) {
                    double apart =
                            states.get(i).position().distanceTo(states.get(j).position());
                    if (apart < 2 * HumanLimits.BODY_RADIUS_METRES - PRESSED_METRES) {
                        throw new ScenarioException(String.format(
                                java.util.Locale.ROOT,
                                "%s: %s and %s would stand %.2f m apart at %.2f s; expected room for both bodies, 0.5 m",
                                scenario.file(),
                                roles.get(i),
                                roles.get(j),
                                apart,
                                t * Bodies.TICK_SECONDS));
                    }
                }
            }
        }
    }

    PlayedScene scene(String version) {
        List<PlayedStep> steps = new ArrayList<>();
        for (Step step : scenario.steps()) {
            if (!leftOut(step) && started.containsKey(step.label())) {
                steps.add(new PlayedStep(
                        step.label(),
                        step.verb().word(),
                        cast.get(step.who()).id(),
                        id(step.other()),
                        id(step.forWhom().or(step::off)),
                        step.kind(),
                        started.get(step.label()),
                        ended.getOrDefault(step.label(), floor.time())));
            }
        }
        steps.sort(Comparator.comparingDouble(PlayedStep::startSeconds).thenComparing(PlayedStep::label));
        List<Guarding> guarding = new ArrayList<>();
        floor.menByTime().forEach((time, men) -> {
            SortedMap<Integer, Integer> ids = new TreeMap<>();
            men.forEach((d, a) -> ids.put(cast.get(d).id(), cast.get(a).id()));
            guarding.add(new Guarding(time, ids));
        });
        return new PlayedScene(
                scenario.name() + "-" + version,
                scenario,
                List.copyOf(cast.values()),
                new Recording(floor.ticks()),
                ball.controls(cast),
                steps,
                guarding);
    }

    private OptionalInt id(Optional<Role> role) {
        return role.map(r -> OptionalInt.of(cast.get(r).id())).orElse(OptionalInt.empty());
    }
}
