package floorgauge.sampleclips.labels.scene;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.sampleclips.labels.FigureNames;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.scenario.PlayedStep;
import floorgauge.sampleclips.tracks.Feet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Screens that the scenario has, with what they earn: weak, missed and moving screens, cuts too early and too late for them,
 * hedges without an outlet; and close passings of team-mates that no scenario calls a screen, of which it can't be told.
 */
final class ScreenTruth {

    /** Below this quality a screen is weak: this project's own choice. */
    static final double WEAK_BELOW = 50;

    /**
     * How near a user passes the screener of a scripted screen. Wider than the 1.3 m of two who merely pass each other: a screener who
     * stands amiss by a body's width is passed at up to this, and that his screen missed is just what is to be told.
     */
    private static final double SCRIPTED_WITHIN = 2.0;

    private static final double USER_WITHIN = 1.3;
    private static final double USER_SPEED = 1.5;
    private static final double DEFENDER_WITHIN = 3;
    private static final double REACH = 1.0;
    private static final double ACTION_SECONDS = 1.5;
    private static final double NEAR = 2.4;
    private static final double REST_SECONDS = 0.12;
    private static final double LOST_UNDER = 0.15;
    private static final double PLATEAU = 0.02;
    private static final double DRAG_SECONDS = 6;
    private static final double HALF_COURT = 1.5;
    private static final List<FindingKind> OF_A_SCREEN = List.of(
            FindingKind.SCREEN,
            FindingKind.WEAK_SCREEN,
            FindingKind.MISSED_SCREEN,
            FindingKind.MOVING_SCREEN,
            FindingKind.EARLY_CUT,
            FindingKind.LATE_CUT);
    private static final List<String> SEVERAL = List.of("double screen", "staggered screen", "elevator screen");
    private static final double EARLY = -0.2;
    private static final double LATE = 0.8;

    private final Motion motion;
    private final List<Screen> screens = new ArrayList<>();

    /**
     * @param step as played
     * @param at tick of the screen
     * @param passing tick at which its user is nearest
     * @param busyFrom first tick of its action
     * @param busyTo last tick of its action
     */
    record Screen(
            PlayedStep step,
            int at,
            int passing,
            int screener,
            int user,
            int defender,
            ScreenMeasures measures,
            int busyFrom,
            int busyTo) {

        double fromSeconds() {
            return Math.max(step.startSeconds(), Math.min(at, passing) * Motion.TICK - 1.0);
        }

        double toSeconds(double end) {
            return Math.min(end, Math.max(at, passing) * Motion.TICK + 1.0);
        }
    }

    ScreenTruth(Motion motion) {
        this.motion = motion;
        for (PlayedStep step : motion.scene().steps()) {
            if (step.verb().equals("screen")) {
                find(step).ifPresent(screens::add);
            }
        }
    }

    List<Screen> screens() {
        return screens;
    }

    /**
     * Whether a screen involves a player at a tick: spacing does not count from 1.5 s before the screen, or from when its two
     * came within 2.4 m of each other for it, until 1.5 s after it.
     */
    boolean busy(int tick, int id) {
        return screens.stream()
                .anyMatch(s -> (s.screener() == id || s.user() == id) && tick >= s.busyFrom() && tick <= s.busyTo());
    }

    private int busyFrom(int at, int passing, int screener, int user) {
        int first = Math.min(at, passing);
        int i = first;
        while (i > 0 && motion.distance(i, screener, user) < NEAR) {
            i--;
        }
        return Math.min(i, motion.tick(motion.time(first) - ACTION_SECONDS));
    }

    private Optional<Screen> find(PlayedStep step) {
        int screener = step.who();
        int user = step.user().orElseThrow();
        int defender = motion.defenderOf(motion.tick(step.startSeconds()), user);
        int from = motion.tick(step.startSeconds());
        int to = motion.tick(Math.min(step.endSeconds() + 3, next(step)));
        int passing = passing(from, to, screener, user);
        if (!candidate(passing, screener, user, defender, SCRIPTED_WITHIN)) {
            return Optional.empty();
        }
        int near = nearest(passing, screener, defender);
        int at = motion.distance(near, screener, defender) > DEFENDER_WITHIN ? passing : near;
        return Optional.of(new Screen(
                step,
                at,
                passing,
                screener,
                user,
                defender,
                ScreenMeasures.of(motion, at, screener, user, defender),
                busyFrom(at, passing, screener, user),
                motion.tick(motion.time(Math.max(at, passing)) + ACTION_SECONDS)));
    }

    /** When the same screener goes on to the next screen for another. */
    private double next(PlayedStep step) {
        return motion.scene().steps().stream()
                .filter(s -> s.who() == step.who() && s.verb().equals("screen"))
                .filter(s -> s.startSeconds() > step.startSeconds())
                .mapToDouble(PlayedStep::startSeconds)
                .min()
                .orElse(Double.MAX_VALUE);
    }

    /** The user is nearest while he runs; a user who never runs, while he has the ball. */
    private int passing(int from, int to, int screener, int user) {
        int best = -1;
        for (int i = from; i <= to; i++) {
            boolean runs = motion.speed(i, user) >= USER_SPEED;
            if (runs && (best < 0 || motion.distance(i, screener, user) < motion.distance(best, screener, user))) {
                best = i;
            }
        }
        return best >= 0 ? best : least(from, to, screener, user);
    }

    /** Of the moments about the passing at which two are nearest, to two centimetres, the one nearest to the passing. */
    private int nearest(int passing, int a, int b) {
        int from = motion.tick(motion.time(passing) - 0.6);
        int to = motion.tick(motion.time(passing) + 1);
        double near = motion.distance(least(from, to, a, b), a, b) + PLATEAU;
        int best = -1;
        for (int i = from; i <= to; i++) {
            boolean counts = motion.distance(i, a, b) <= near;
            if (counts && (best < 0 || Math.abs(i - passing) < Math.abs(best - passing))) {
                best = i;
            }
        }
        return best;
    }

    private int least(int from, int to, int a, int b) {
        int least = from;
        for (int i = from; i <= to; i++) {
            if (motion.distance(i, a, b) < motion.distance(least, a, b)) {
                least = i;
            }
        }
        return least;
    }

    private boolean candidate(int passing, int screener, int user, int defender, double within) {
        boolean near = motion.distance(passing, screener, user) <= within;
        boolean runs = motion.speed(passing, user) >= USER_SPEED || motion.controls(passing, user);
        int before = motion.tick(motion.time(passing) - 1);
        boolean guarded = motion.distance(before, user, defender) <= DEFENDER_WITHIN;
        return near && runs && guarded;
    }

    List<LabelledEvent> events() {
        List<LabelledEvent> events = new ArrayList<>();
        for (Screen screen : screens) {
            events.add(screen(screen));
            flags(screen, events);
        }
        passings(events);
        events.addAll(new ChainTruth(motion, screens).events(this::label));
        return events;
    }

    private EventMaker maker(FindingKind kind, Screen screen) {
        return new EventMaker(
                        kind,
                        Optional.of(label(screen)),
                        screen.fromSeconds(),
                        screen.toSeconds(motion.scene().durationSeconds()))
                .at(motion.time(screen.at()))
                .role(Role.SCREENER, screen.screener())
                .role(Role.USER, screen.user())
                .role(Role.USER_DEFENDER, screen.defender())
                .role(
                        Role.SCREENER_DEFENDER,
                        motion.defenderOf(motion.tick(screen.step().startSeconds()), screen.screener()));
    }

    private LabelledEvent screen(Screen screen) {
        ScreenMeasures m = screen.measures();
        double stance = stance(screen);
        EventMaker maker = maker(FindingKind.SCREEN, screen)
                .figure(FigureNames.GAP, m.gapMetres())
                .figure(FigureNames.CONTACT_TIME, m.contactSeconds())
                .figure(FigureNames.SET_SHARE, m.setShare())
                .figure(FigureNames.SCREENER_SPEED, m.screenerSpeed())
                .figure(FigureNames.STANCE, stance)
                .figure(FigureNames.SQUARENESS, m.squareness())
                .figure(FigureNames.BRUSH, m.brushMetres())
                .figure(FigureNames.SEPARATION, m.separationMetres())
                .figure(FigureNames.TIME_LOST, m.lostSeconds())
                .figure(FigureNames.QUALITY, m.quality(stance))
                .word("next act", nextAct(screen));
        coverage(screen).ifPresent(c -> maker.word("coverage", c));
        return maker.make();
    }

    private double stance(Screen screen) {
        return Feet.of(motion.person(screen.at(), screen.screener()), 0).overShoulders();
    }

    /**
     * The scenario's own word, where it names what one screener does; else from who has the ball and where the user goes. A
     * pin-down is a down screen; a drag comes soon after half court; words for several screeners are told by chains.
     */
    private String label(Screen screen) {
        String told = screen.step().kind().orElse("");
        if (told.equals("pin-down")) {
            return "down screen";
        }
        if (told.equals("drag")) {
            return soonAfterHalfCourt(screen.passing()) ? told : "ball screen";
        }
        if (!told.isEmpty() && !SEVERAL.contains(told)) {
            return told;
        }
        if (motion.controls(screen.passing(), screen.user())) {
            return "ball screen";
        }
        int before = motion.tick(motion.time(screen.passing()) - 1);
        int after = motion.tick(motion.time(screen.passing()) + 1);
        double out = fromBaseline(after, screen.user()) - fromBaseline(before, screen.user());
        double nearer = motion.toRim(before, screen.user()) - motion.toRim(after, screen.user());
        double sideways = motion.position(before, screen.user()).y()
                * motion.position(after, screen.user()).y();
        if (out > 1) {
            return "down screen";
        }
        return nearer > 1.5 ? "back screen" : sideways < 0 ? "cross screen" : "flare screen";
    }

    private boolean soonAfterHalfCourt(int passing) {
        for (int i = motion.tick(motion.time(passing) - DRAG_SECONDS); i <= passing; i++) {
            if (motion.scene().end().sign() * motion.ball(i).x() < HALF_COURT) {
                return true;
            }
        }
        return false;
    }

    private double fromBaseline(int tick, int id) {
        return motion.scene().rules().lengthMetres() / 2
                - motion.scene().end().sign() * motion.position(tick, id).x();
    }

    private String nextAct(Screen screen) {
        return motion.scene().steps().stream()
                .filter(s -> s.who() == screen.screener()
                        && s.startSeconds() > screen.step().startSeconds())
                .findFirst()
                .map(s -> s.verb().equals("screen") ? "screens again" : s.verb())
                .orElse("stands");
    }

    private Optional<String> coverage(Screen screen) {
        int screenersDefender = motion.defenderOf(motion.tick(screen.step().startSeconds()), screen.screener());
        return motion.scene().steps().stream()
                .filter(s -> s.who() == screen.defender() || s.who() == screenersDefender)
                .filter(s -> List.of("over", "under", "switch", "hedge", "blitz", "drop")
                        .contains(s.verb()))
                .filter(s -> s.startSeconds() >= screen.step().startSeconds()
                        && s.startSeconds() <= screen.toSeconds(motion.scene().durationSeconds()))
                .map(PlayedStep::verb)
                .findFirst();
    }

    private void flags(Screen screen, List<LabelledEvent> events) {
        ScreenMeasures m = screen.measures();
        double quality = m.quality(stance(screen));
        boolean contact = m.contactSeconds() >= ScreenMeasures.CONTACT_SECONDS;
        boolean missed =
                !contact && m.gapMetres() + 0.5 <= REACH && m.lostSeconds().orElse(Double.MAX_VALUE) < LOST_UNDER;
        boolean moving = contact && m.speedAtContact() > ScreenMeasures.STILL;
        if (missed) {
            events.add(maker(FindingKind.MISSED_SCREEN, screen)
                    .figure(FigureNames.GAP, m.gapMetres())
                    .figure(FigureNames.TIME_LOST, m.lostSeconds())
                    .make());
        } else if (quality < WEAK_BELOW) {
            events.add(maker(FindingKind.WEAK_SCREEN, screen)
                    .figure(FigureNames.QUALITY, quality)
                    .figure(FigureNames.GAP, m.gapMetres())
                    .make());
        }
        boolean early = timing(screen, events);
        if (moving && !early) {
            events.add(maker(FindingKind.MOVING_SCREEN, screen)
                    .figure(FigureNames.SCREENER_SPEED, m.speedAtContact())
                    .make());
        }
    }

    /**
     * Of a user without the ball and a screener who comes to rest: start of the run against that moment.
     *
     * @return whether he left too early, which leaves his screener no time to be set
     */
    private boolean timing(Screen screen, List<LabelledEvent> events) {
        if (motion.controls(screen.passing(), screen.user())) {
            return false;
        }
        OptionalInt set = setTick(screen);
        int start = startOfRun(screen);
        if (set.isEmpty()) {
            return false;
        }
        double after = motion.time(start) - motion.time(set.getAsInt());
        FindingKind kind = after < EARLY ? FindingKind.EARLY_CUT : after > LATE ? FindingKind.LATE_CUT : null;
        if (kind != null) {
            events.add(maker(kind, screen)
                    .role(Role.CUTTER, screen.user())
                    .figure(FigureNames.START_AFTER_SET, after)
                    .make());
        }
        return kind == FindingKind.EARLY_CUT;
    }

    /**
     * The beginning of the last rest of at least 0.12 s that ends at most 1.5 s before half a second after the screen; empty
     * where he never rests.
     */
    private OptionalInt setTick(Screen screen) {
        int until = motion.tick(motion.time(Math.max(screen.at(), screen.passing())) + 0.5);
        return motion
                .spells(i -> i <= until && motion.speed(i, screen.screener()) <= ScreenMeasures.STILL, REST_SECONDS)
                .stream()
                .filter(s -> motion.time(until) - motion.time(s.last()) <= 1.5)
                .mapToInt(Motion.Spell::first)
                .max();
    }

    /** The last moment before the passing at which the user moved at most 1 m/s. */
    private int startOfRun(Screen screen) {
        int i = screen.passing();
        while (i > 0 && motion.speed(i, screen.user()) > 1.0) {
            i--;
        }
        return i;
    }

    /** Team-mates who pass each other as in a screen without a screen: whether it was one, and so whether it was a bad one, can't be told from the motion. */
    private void passings(List<LabelledEvent> events) {
        for (int user : motion.attackers()) {
            for (int other : motion.attackers()) {
                if (user == other) {
                    continue;
                }
                for (Motion.Spell spell :
                        motion.spells(i -> motion.distance(i, user, other) <= USER_WITHIN, Motion.TICK)) {
                    int passing = least(spell.first(), spell.last(), user, other);
                    int defender = motion.defenderOf(passing, user);
                    boolean known = screens.stream()
                            .anyMatch(s -> samePair(s, user, other)
                                    && motion.time(spell.last()) >= s.step().startSeconds()
                                    && motion.time(spell.first())
                                            <= s.toSeconds(motion.scene().durationSeconds()));
                    if (!known && candidate(passing, other, user, defender, USER_WITHIN)) {
                        for (FindingKind kind : OF_A_SCREEN) {
                            events.add(new EventMaker(
                                            kind,
                                            Optional.empty(),
                                            motion.time(spell.first()),
                                            motion.time(spell.last()))
                                    .at(motion.time(passing))
                                    .role(Role.SCREENER, other)
                                    .role(Role.USER, user)
                                    .role(Role.USER_DEFENDER, defender)
                                    .cantTell(LabelledEvent.EXISTENCE)
                                    .make());
                        }
                    }
                }
            }
        }
    }

    private static boolean samePair(Screen screen, int a, int b) {
        return (screen.screener() == a && screen.user() == b) || (screen.screener() == b && screen.user() == a);
    }
}
