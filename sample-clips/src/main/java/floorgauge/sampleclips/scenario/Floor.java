package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.Bodies;
import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.scene.PersonState;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Everyone on the floor at the current tick, as a goal sees it. Not safe for use by several threads. */
final class Floor {

    /** Common practice: a player answers what another does after about a fifth of a second. */
    static final double REACTION_SECONDS = 0.2;

    private static final double OFF_LINES_METRES = 0.5;

    private final FloorVector rim;
    private final FloorVector corner;
    private final Restlessness restlessness;
    private final SortedMap<Role, Mover> movers;
    private final List<Mover> everyone;
    private final Map<Role, Goal> goals = new TreeMap<>();
    private final Map<Role, Role> men = new TreeMap<>();
    private final List<List<PersonState>> ticks = new ArrayList<>();
    private final Map<Role, Integer> index = new TreeMap<>();
    private final SortedMap<Double, Map<Role, Role>> menByTime = new TreeMap<>();
    private FloorVector ball = FloorVector.ZERO;
    private Optional<Role> holder = Optional.empty();
    private Optional<Role> receiver = Optional.empty();
    private boolean standing;

    Floor(FloorVector rim, FloorVector corner, SortedMap<Role, Mover> movers, Restlessness restlessness) {
        this.rim = rim;
        this.corner = corner;
        this.restlessness = restlessness;
        this.movers = movers;
        this.everyone = List.copyOf(movers.values());
        movers.keySet().forEach(role -> index.put(role, index.size()));
        record();
    }

    void record() {
        ticks.add(everyone.stream().map(Mover::state).toList());
    }

    List<List<PersonState>> ticks() {
        return ticks;
    }

    double time() {
        return (ticks.size() - 1) * Bodies.TICK_SECONDS;
    }

    FloorVector rim() {
        return rim;
    }

    Restlessness restlessness() {
        return restlessness;
    }

    /** Whether the fault is on in which those without a step stand and watch. */
    boolean standing() {
        return standing;
    }

    void standing(boolean now) {
        standing = now;
    }

    /** Who is about to get the ball, if anyone is. */
    void receiver(Optional<Role> who) {
        receiver = who;
    }

    /** Whether an attacker has a reason to keep still: the ball, a pass on its way, a screen on its way. */
    boolean quiet(Role attacker) {
        return holder.filter(attacker::equals).isPresent()
                || receiver.filter(attacker::equals).isPresent()
                || awaitsScreen(attacker);
    }

    /** Whether a team-mate is on his way to screen for an attacker, or stands ready. */
    boolean awaitsScreen(Role attacker) {
        return goals.values().stream()
                .anyMatch(g -> g instanceof SetScreen screen
                        && !screen.isUsed()
                        && screen.user().equals(attacker));
    }

    /** The nearest point within the lines to where one who keeps a place would go; places out of bounds are kept. */
    FloorVector inside(FloorVector target, FloorVector place) {
        double x = Math.max(corner.x() - OFF_LINES_METRES, Math.abs(place.x()));
        double y = Math.max(corner.y() - OFF_LINES_METRES, Math.abs(place.y()));
        return new FloorVector(Math.max(-x, Math.min(x, target.x())), Math.max(-y, Math.min(y, target.y())));
    }

    SortedMap<Role, Mover> movers() {
        return movers;
    }

    List<Mover> everyone() {
        return everyone;
    }

    /** All of a player's side, the player among them. */
    List<Mover> team(Role role) {
        return movers.entrySet().stream()
                .filter(e -> e.getKey().defends() == role.defends())
                .map(Map.Entry::getValue)
                .toList();
    }

    Mover mover(Role role) {
        return movers.get(role);
    }

    Goal goal(Role role) {
        return goals.get(role);
    }

    void goal(Role role, Goal goal) {
        goals.put(role, goal);
    }

    /** Whom a defender guards. */
    Role man(Role defender) {
        return men.get(defender);
    }

    void man(Role defender, Role attacker) {
        men.put(defender, attacker);
        menByTime.put(time(), new TreeMap<>(men));
    }

    /** Whom each defender guards, by the time from which it holds. */
    SortedMap<Double, Map<Role, Role>> menByTime() {
        return menByTime;
    }

    FloorVector ball() {
        return ball;
    }

    Optional<Role> holder() {
        return holder;
    }

    void ball(FloorVector position, Optional<Role> heldBy) {
        ball = position;
        holder = heldBy;
    }

    /** Where someone was a reaction time ago. */
    FloorVector seenPosition(Role role) {
        return FloorVector.of(seen(role).position());
    }

    /** How someone moved a reaction time ago. */
    FloorVector seenVelocity(Role role) {
        PersonState state = seen(role);
        return new FloorVector(state.velocityXMetresPerSecond(), state.velocityYMetresPerSecond());
    }

    private PersonState seen(Role role) {
        int ago = (int) Math.round(REACTION_SECONDS / Bodies.TICK_SECONDS);
        return ticks.get(Math.max(0, ticks.size() - 1 - ago)).get(index.get(role));
    }
}
