package floorgauge.sampleclips.labels.scene;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.sampleclips.labels.FigureNames;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.OpenReceiver;
import floorgauge.sampleclips.scenario.Control;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Passes, handoffs, shots, open windows, and what they earn: late passes and missed windows. */
final class PassTruth {

    private static final double SHORTEST_WINDOW = 0.24;
    private static final double ON_TIME = 0.6;
    private static final double MISSED_FROM = 0.6;
    private static final double OWN_SHOT_SECONDS = 1.0;
    private static final double OPENED_BEFORE_SECONDS = 0.6;
    private static final double OPENED_AFTER_SECONDS = 2.5;
    private static final double FACING = Math.PI / 3;
    private static final double HANDED_OVER_SECONDS = 1.0;

    private final Motion motion;
    private final List<ScreenTruth.Screen> screens;
    private final OpenReceiver openReceiver;
    private final List<Window> windows = new ArrayList<>();

    /** An open receiver while one passer controls the ball. */
    record Window(int passer, int receiver, int first, int last) {

        double seconds() {
            return (last - first + 1) * Motion.TICK;
        }
    }

    PassTruth(Motion motion, List<ScreenTruth.Screen> screens) {
        this.motion = motion;
        this.screens = screens;
        this.openReceiver = new OpenReceiver(motion.rim());
        for (int passer : motion.attackers()) {
            for (int receiver : motion.attackers()) {
                if (passer != receiver) {
                    motion.spells(i -> motion.controls(i, passer) && open(i, receiver), SHORTEST_WINDOW)
                            .forEach(s -> windows.add(new Window(passer, receiver, s.first(), s.last())));
                }
            }
        }
    }

    List<Window> windows() {
        return windows;
    }

    /** Free of defenders, a clear lane, and a threat. */
    boolean open(int tick, int receiver) {
        return openReceiver.isOpen(
                motion.ball(tick),
                motion.position(tick, receiver),
                motion.defenders().stream().map(d -> motion.position(tick, d)).toList());
    }

    List<LabelledEvent> events() {
        List<LabelledEvent> events = new ArrayList<>();
        List<Control> controls = motion.scene().controls();
        for (int i = 0; i < controls.size(); i++) {
            Control control = controls.get(i);
            switch (control.kind()) {
                case PASS -> pass(control, events);
                case SHOT ->
                    events.add(event(FindingKind.SHOT, control.fromSeconds(), control.toSeconds())
                            .role(Role.SHOOTER, control.from())
                            .make());
                default -> {
                    if (i > 0
                            && controls.get(i - 1).controlled()
                            && controls.get(i - 1).from() != control.from()) {
                        events.add(event(FindingKind.HANDOFF, control.fromSeconds() - 0.3, control.fromSeconds() + 0.3)
                                .at(control.fromSeconds())
                                .role(Role.PASSER, controls.get(i - 1).from())
                                .role(Role.RECEIVER, control.from())
                                .make());
                    }
                }
            }
        }
        for (Window window : windows) {
            events.add(window(FindingKind.OPEN_WINDOW, window).make());
            if (missed(window)) {
                events.add(window(FindingKind.MISSED_WINDOW, window).make());
            }
        }
        return events;
    }

    private EventMaker event(FindingKind kind, double from, double to) {
        double end = motion.scene().durationSeconds();
        return new EventMaker(kind, Optional.of(kind.words()), Math.max(0, Math.min(end, from)), Math.min(end, to))
                .at(from);
    }

    private EventMaker window(FindingKind kind, Window window) {
        return event(kind, motion.time(window.first()), motion.time(window.last()))
                .role(Role.PASSER, window.passer())
                .role(Role.RECEIVER, window.receiver())
                .figure(FigureNames.WINDOW_LENGTH, window.seconds())
                .figure(FigureNames.OPENING_SEPARATION, motion.openness(window.first(), window.receiver()));
    }

    private void pass(Control pass, List<LabelledEvent> events) {
        int receiver = pass.to().orElseThrow();
        if (motion.defenders().contains(receiver)) {
            events.add(event(FindingKind.TURNOVER, pass.fromSeconds(), pass.toSeconds())
                    .role(Role.PASSER, pass.from())
                    .role(Role.DEFENDER, receiver)
                    .figure(FigureNames.FLIGHT_TIME, pass.toSeconds() - pass.fromSeconds())
                    .make());
            return;
        }
        int release = motion.tick(pass.fromSeconds());
        int reception = motion.tick(pass.toSeconds());
        Optional<Window> window = windows.stream()
                .filter(w -> w.passer() == pass.from() && w.receiver() == receiver && w.first() <= release)
                .filter(w -> sameControl(w.last(), release, pass.from()))
                .reduce((a, b) -> b);
        OptionalDouble delay = window.map(w -> OptionalDouble.of(motion.time(release) - motion.time(w.first())))
                .orElse(OptionalDouble.empty());
        events.add(pass(FindingKind.PASS, pass, receiver, reception, delay).make());
        if (window.isPresent() && late(window.orElseThrow(), release, reception)) {
            events.add(pass(FindingKind.LATE_PASS, pass, receiver, reception, delay)
                    .figure(
                            FigureNames.OPENING_SEPARATION,
                            motion.openness(window.orElseThrow().first(), receiver))
                    .make());
        }
    }

    private EventMaker pass(FindingKind kind, Control pass, int receiver, int reception, OptionalDouble delay) {
        return event(kind, pass.fromSeconds(), pass.toSeconds())
                .role(Role.PASSER, pass.from())
                .role(Role.RECEIVER, receiver)
                .figure(FigureNames.FLIGHT_TIME, pass.toSeconds() - pass.fromSeconds())
                .figure(FigureNames.RECEPTION_SEPARATION, motion.openness(reception, receiver))
                .figure(FigureNames.DELAY, delay);
    }

    private boolean sameControl(int from, int to, int passer) {
        for (int i = from; i < to; i++) {
            if (!motion.controls(i, passer)) {
                return false;
            }
        }
        return true;
    }

    /** Delayed, and the window closed or the receiver's separation fell by more than half before reception. */
    private boolean late(Window window, int release, int reception) {
        boolean delayed = motion.time(release) - motion.time(window.first()) > ON_TIME;
        double atOpening = motion.openness(window.first(), window.receiver());
        double atReception = motion.openness(reception, window.receiver());
        boolean closed = window.last() < release - 1 || atReception < OpenReceiver.OPEN_METRES;
        return delayed && (closed || atReception < atOpening / 2);
    }

    /** One who comes for a handoff is open on his way, and nobody passes to him then. */
    private boolean handedOver(Window window) {
        int until = motion.tick(motion.time(window.last()) + HANDED_OVER_SECONDS);
        for (int i = window.last(); i <= until; i++) {
            if (motion.controls(i, window.receiver())) {
                return sameControl(window.last(), i - 1, window.passer());
            }
        }
        return false;
    }

    /**
     * Kept through a whole window that a screen opened by a passer who faces it most of the time, does not shoot himself soon
     * after, and does not pass to the receiver later in the same control: that pass is late, not missed.
     */
    private boolean missed(Window window) {
        if (window.seconds() < MISSED_FROM
                || !motion.controls(Math.min(motion.ticks() - 1, window.last() + 2), window.passer())
                || !openedByScreen(window)
                || usedLater(window)
                || handedOver(window)) {
            return false;
        }
        int facing = 0;
        for (int i = window.first(); i <= window.last(); i++) {
            FloorVector to = motion.position(i, window.receiver()).minus(motion.position(i, window.passer()));
            double off = StrictMath.IEEEremainder(
                    to.radians() - motion.person(i, window.passer()).facingRadians(), 2 * Math.PI);
            facing += Math.abs(off) <= FACING ? 1 : 0;
        }
        return 2 * facing >= window.last() - window.first() + 1;
    }

    /** The receiver was covered before, and used or set a screen shortly before. */
    private boolean openedByScreen(Window window) {
        boolean opened = window.first() > 0 && motion.controls(window.first() - 1, window.passer());
        double open = motion.time(window.first());
        return opened
                && screens.stream()
                        .filter(s -> s.user() == window.receiver() || s.screener() == window.receiver())
                        .anyMatch(s -> open >= motion.time(Math.min(s.at(), s.passing())) - OPENED_BEFORE_SECONDS
                                && open <= motion.time(Math.max(s.at(), s.passing())) + OPENED_AFTER_SECONDS);
    }

    private boolean usedLater(Window window) {
        return motion.scene().controls().stream()
                .filter(c -> c.from() == window.passer())
                .anyMatch(c -> {
                    int release = motion.tick(c.fromSeconds());
                    boolean after = release > window.last() && sameControl(window.last(), release, window.passer());
                    boolean toHim = c.kind() == Control.Kind.PASS && c.to().orElse(0) == window.receiver();
                    boolean soon = c.fromSeconds() <= motion.time(window.last()) + OWN_SHOT_SECONDS;
                    return after && (toHim || (c.kind() == Control.Kind.SHOT && soon));
                });
    }
}
