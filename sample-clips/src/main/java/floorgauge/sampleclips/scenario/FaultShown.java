package floorgauge.sampleclips.scenario;

import floorgauge.events.finding.FindingKind;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Whether the faults of a version show in the motion, by the definitions of what is measured. */
final class FaultShown {

    private FaultShown() {}

    /** How many of the faults can't be seen in a scene. */
    static int unseen(List<Fault> faults, PlayedScene scene, long seed) {
        List<LabelledEvent> events = SceneLabeller.label(scene, seed).events();
        int unseen = 0;
        for (Fault fault : faults) {
            Set<FindingKind> signs = signs(fault, scene);
            boolean seen = signs.isEmpty() || events.stream().anyMatch(e -> signs.contains(e.kind()) && isSure(e));
            unseen += seen ? 0 : 1;
        }
        return unseen;
    }

    private static boolean isSure(LabelledEvent event) {
        return !event.cantTell().contains(LabelledEvent.EXISTENCE);
    }

    /** What a fault earns, any of them; nothing where its sign is that something is not there. */
    private static Set<FindingKind> signs(Fault fault, PlayedScene scene) {
        if (fault instanceof Fault.ScreenMisses) {
            return EnumSet.of(FindingKind.WEAK_SCREEN, FindingKind.MISSED_SCREEN);
        }
        if (fault instanceof Fault.ScreenerMoving) {
            return EnumSet.of(FindingKind.MOVING_SCREEN);
        }
        if (fault instanceof Fault.Late late) {
            boolean pass = scene.steps().stream()
                    .anyMatch(s -> s.label().equals(late.step()) && s.verb().equals("pass"));
            return pass
                    ? EnumSet.of(FindingKind.LATE_PASS, FindingKind.STALLED_BALL)
                    : EnumSet.of(FindingKind.LATE_CUT, FindingKind.STALLED_BALL);
        }
        if (fault instanceof Fault.Early) {
            return EnumSet.of(FindingKind.EARLY_CUT);
        }
        if (fault instanceof Fault.Drift) {
            return EnumSet.of(FindingKind.CROWDED_FLOOR);
        }
        return fault instanceof Fault.Stolen ? EnumSet.of(FindingKind.TURNOVER) : EnumSet.noneOf(FindingKind.class);
    }
}
