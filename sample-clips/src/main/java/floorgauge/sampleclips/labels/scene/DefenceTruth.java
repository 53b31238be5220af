package floorgauge.sampleclips.labels.scene;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.sampleclips.labels.FigureNames;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.scenario.PlayedStep;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Switches, numbers advantages against a hedge or blitz, and whether their outlet was there. */
final class DefenceTruth {

    private static final double OUTLET_SECONDS = 1.5;

    private final Motion motion;
    private final PassTruth passes;

    DefenceTruth(Motion motion, PassTruth passes) {
        this.motion = motion;
        this.passes = passes;
    }

    List<LabelledEvent> events() {
        List<LabelledEvent> events = new ArrayList<>();
        for (PlayedStep step : motion.scene().steps()) {
            switch (step.verb()) {
                case "switch" ->
                    events.add(maker(FindingKind.SWITCH, step.startSeconds(), step.startSeconds() + 1, step)
                            .role(Role.DEFENDER, step.who())
                            .role(Role.DEFENDER, step.other().orElseThrow())
                            .make());
                case "hedge", "blitz" -> advantage(step, events);
                default -> {}
            }
        }
        return events;
    }

    private EventMaker maker(FindingKind kind, double from, double to, PlayedStep step) {
        return new EventMaker(
                        kind,
                        Optional.of(step.verb()),
                        from,
                        Math.min(to, motion.scene().durationSeconds()))
                .at(from);
    }

    /** Two on the ball leave the screener free; the outlet is whichever team-mate is open first. */
    private void advantage(PlayedStep step, List<LabelledEvent> events) {
        int handler = step.other().orElseThrow();
        int from = motion.tick(step.startSeconds());
        int to = motion.tick(step.startSeconds() + OUTLET_SECONDS);
        Optional<int[]> outlet = outlet(from, to, handler);
        EventMaker maker = maker(FindingKind.NUMBERS_ADVANTAGE, step.startSeconds(), motion.time(to), step)
                .role(Role.BALL_HANDLER, handler)
                .role(Role.SCREENER_DEFENDER, step.who());
        outlet.ifPresent(
                o -> maker.role(Role.OUTLET, o[0]).figure(FigureNames.OPENING_SEPARATION, motion.openness(o[1], o[0])));
        events.add(
                maker.word("outlet", outlet.isPresent() ? "there" : "not there").make());
        if (outlet.isEmpty()) {
            events.add(maker(FindingKind.NO_OUTLET, step.startSeconds(), motion.time(to), step)
                    .role(Role.BALL_HANDLER, handler)
                    .role(Role.SCREENER_DEFENDER, step.who())
                    .make());
        }
    }

    /** Whoever's defender went to the ball rolls or pops open, or a team-mate flashes to the high post. */
    private Optional<int[]> outlet(int from, int to, int handler) {
        double freeThrow = motion.scene().rules().freeThrowLineMetres()
                - motion.scene().rules().rimFromEndLineMetres();
        for (int i = from; i <= to; i++) {
            for (int mate : motion.attackers()) {
                boolean flash = motion.toRim(i, mate) < freeThrow + 1.2
                        && Math.abs(motion.position(i, mate).y())
                                < motion.scene().rules().laneWidthMetres() / 2 + 0.3;
                boolean screener = screens(mate, handler, i);
                if (mate != handler && (flash || screener) && motion.controls(i, handler) && passes.open(i, mate)) {
                    return Optional.of(new int[] {mate, i});
                }
            }
        }
        return Optional.empty();
    }

    private boolean screens(int mate, int handler, int tick) {
        return motion.scene().steps().stream()
                .anyMatch(s -> s.verb().equals("screen")
                        && s.who() == mate
                        && s.user().orElse(0) == handler
                        && s.startSeconds() <= motion.time(tick));
    }
}
