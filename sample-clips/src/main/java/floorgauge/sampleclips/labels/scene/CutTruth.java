package floorgauge.sampleclips.labels.scene;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.sampleclips.labels.FigureNames;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.scenario.PlayedStep;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Cuts: runs without the ball at over 3 m/s for at least 0.4 s, with a displacement of at least 2 m. */
final class CutTruth {

    private static final double SPEED = 3;
    private static final double LEAST_SECONDS = 0.4;
    private static final double LEAST_METRES = 2;
    private static final double CURLED = Math.PI / 3;

    private final Motion motion;
    private final List<Cut> cuts = new ArrayList<>();

    record Cut(int cutter, Motion.Spell run) {}

    CutTruth(Motion motion) {
        this.motion = motion;
        for (int attacker : motion.attackers()) {
            motion
                    .spells(i -> !motion.controls(i, attacker) && motion.speed(i, attacker) > SPEED, LEAST_SECONDS)
                    .stream()
                    .filter(s -> displacement(attacker, s) >= LEAST_METRES)
                    .forEach(s -> cuts.add(new Cut(attacker, s)));
        }
    }

    /** Whether a player cuts at a tick. */
    boolean busy(int tick, int id) {
        return cuts.stream()
                .anyMatch(c -> c.cutter() == id
                        && tick >= c.run().first()
                        && tick <= c.run().last());
    }

    private double displacement(int cutter, Motion.Spell run) {
        return motion.position(run.first(), cutter).distanceTo(motion.position(run.last(), cutter));
    }

    List<LabelledEvent> events() {
        List<LabelledEvent> events = new ArrayList<>();
        for (Cut cut : cuts) {
            double top = 0;
            for (int i = cut.run().first(); i <= cut.run().last(); i++) {
                top = Math.max(top, motion.speed(i, cut.cutter()));
            }
            events.add(new EventMaker(
                            FindingKind.CUT,
                            Optional.of(label(cut)),
                            motion.time(cut.run().first()),
                            motion.time(cut.run().last()))
                    .at(motion.time(cut.run().first()))
                    .role(Role.CUTTER, cut.cutter())
                    .role(Role.DEFENDER, motion.defenderOf(cut.run().first(), cut.cutter()))
                    .figure(FigureNames.TOP_SPEED, top)
                    .figure(FigureNames.DISPLACEMENT, displacement(cut.cutter(), cut.run()))
                    .make());
        }
        return events;
    }

    /** The scenario's own word; else from how far the run turns and whether it leads to the rim. */
    private String label(Cut cut) {
        double from = motion.time(cut.run().first());
        Optional<String> told = motion.scene().steps().stream()
                .filter(s -> s.who() == cut.cutter() && s.verb().equals("cut"))
                .filter(s -> s.startSeconds() <= from && from <= s.endSeconds())
                .reduce((a, b) -> b)
                .flatMap(PlayedStep::kind);
        if (told.isPresent()) {
            return told.orElseThrow();
        }
        FloorVector first = motion.velocity(cut.run().first(), cut.cutter());
        FloorVector last = motion.velocity(cut.run().last(), cut.cutter());
        double turn = Math.abs(StrictMath.atan2(first.cross(last), first.dot(last)));
        double nearer = motion.toRim(cut.run().first(), cut.cutter())
                - motion.toRim(cut.run().last(), cut.cutter());
        return turn > CURLED ? (nearer < -0.5 ? "fade" : "curl") : "straight";
    }
}
