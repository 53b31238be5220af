package floorgauge.sampleclips.labels.scene;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.sampleclips.labels.FigureNames;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.movement.FloorVector;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;

/** Spells of a crowded or collapsed floor and of a stalled ball, outside screens, handoffs and cuts. */
final class SpacingTruth {

    private static final double CROWDED_WITHIN = 2.4;
    private static final double CROWDED_OVER = 1.0;
    private static final double COLLAPSED_UNDER = 28;
    private static final double COLLAPSED_OVER = 1.5;
    private static final double STALLED_OVER = 3.0;
    private static final double STALLED_UNDER = 0.8;

    private final Motion motion;
    private final BiPredicate<Integer, Integer> busy;

    /** @param busy whether, at a tick, a player is in a screen, a handoff or a cut */
    SpacingTruth(Motion motion, BiPredicate<Integer, Integer> busy) {
        this.motion = motion;
        this.busy = busy;
    }

    List<LabelledEvent> events() {
        List<LabelledEvent> events = new ArrayList<>();
        List<Integer> five = motion.attackers();
        for (int i = 0; i < five.size(); i++) {
            for (int j = i + 1; j < five.size(); j++) {
                crowded(five.get(i), five.get(j), events);
            }
        }
        if (five.size() == 5) {
            motion.spells(i -> hull(i) < COLLAPSED_UNDER && !acts(i), COLLAPSED_OVER)
                    .forEach(s -> events.add(collapsed(s)));
        }
        for (int holder : five) {
            motion.spells(i -> motion.controls(i, holder) && meanSpeed(i) < STALLED_UNDER && !acts(i), STALLED_OVER)
                    .forEach(s -> events.add(spell(FindingKind.STALLED_BALL, s)
                            .role(Role.BALL_HANDLER, holder)
                            .figure(FigureNames.MEAN_SPEED, meanOver(s))
                            .make()));
        }
        return events;
    }

    /** Whether a screen, a handoff or a cut passes by: spacing is ruled out then. */
    private boolean acts(int tick) {
        return motion.attackers().stream().anyMatch(id -> busy.test(tick, id));
    }

    private EventMaker spell(FindingKind kind, Motion.Spell spell) {
        return new EventMaker(kind, Optional.of(kind.words()), motion.time(spell.first()), motion.time(spell.last()))
                .figure(FigureNames.DURATION, spell.seconds());
    }

    private void crowded(int a, int b, List<LabelledEvent> events) {
        motion.spells(
                        i -> motion.distance(i, a, b) < CROWDED_WITHIN && !busy.test(i, a) && !busy.test(i, b),
                        CROWDED_OVER)
                .forEach(s -> {
                    double least = Double.MAX_VALUE;
                    for (int i = s.first(); i <= s.last(); i++) {
                        least = Math.min(least, motion.distance(i, a, b));
                    }
                    events.add(spell(FindingKind.CROWDED_FLOOR, s)
                            .role(Role.ATTACKER, a)
                            .role(Role.ATTACKER, b)
                            .figure(FigureNames.LEAST_DISTANCE, least)
                            .make());
                });
    }

    private LabelledEvent collapsed(Motion.Spell s) {
        double least = Double.MAX_VALUE;
        for (int i = s.first(); i <= s.last(); i++) {
            least = Math.min(least, hull(i));
        }
        EventMaker maker = spell(FindingKind.COLLAPSED_FLOOR, s).figure(FigureNames.LEAST_HULL, least);
        motion.attackers().forEach(id -> maker.role(Role.ATTACKER, id));
        return maker.make();
    }

    private double meanSpeed(int tick) {
        return motion.attackers().stream()
                .mapToDouble(id -> motion.speed(tick, id))
                .average()
                .orElseThrow();
    }

    private double meanOver(Motion.Spell spell) {
        double sum = 0;
        for (int i = spell.first(); i <= spell.last(); i++) {
            sum += meanSpeed(i);
        }
        return sum / (spell.last() - spell.first() + 1);
    }

    /** Area of the convex hull of the attackers: gift wrapping, then the shoelace formula. */
    double hull(int tick) {
        List<FloorVector> points =
                motion.attackers().stream().map(id -> motion.position(tick, id)).toList();
        FloorVector start = points.stream()
                .min(Comparator.comparingDouble(FloorVector::x).thenComparingDouble(FloorVector::y))
                .orElseThrow();
        List<FloorVector> hull = new ArrayList<>();
        FloorVector at = start;
        do {
            hull.add(at);
            FloorVector next = points.get(0);
            for (FloorVector p : points) {
                if (next.equals(at) || next.minus(at).cross(p.minus(at)) < 0) {
                    next = p;
                }
            }
            at = next;
        } while (!at.equals(start) && hull.size() <= points.size());
        double twice = 0;
        for (int i = 0; i < hull.size(); i++) {
            twice += hull.get(i).cross(hull.get((i + 1) % hull.size()));
        }
        return Math.abs(twice) / 2;
    }
}
