package floorgauge.events.diagram;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.step.SmoothTrail;
import floorgauge.events.step.Spots;
import floorgauge.events.step.Step;
import floorgauge.events.step.StepKind;
import floorgauge.events.step.StepReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The drawings of a possession. */
final class PossessionDiagram {

    private static final double LEAST_NUMBERED_METRES = 2.6;

    private final RuleSet rules;
    private final PossessionFindings possession;
    private final PlayerLabels labels;
    private final Map<Integer, SmoothTrail> trails;
    private final List<Step> steps;
    private final StepWords words;
    private final Page page;

    PossessionDiagram(RuleSet rules, PossessionFindings possession, PlayerLabels labels) {
        this.rules = rules;
        this.possession = possession;
        this.labels = labels;
        StepReader reader = new StepReader(possession);
        this.trails = reader.trails();
        this.steps = plain(reader.read());
        this.words =
                new StepWords(labels, new Spots(rules, possession.possession().end()));
        this.page = page();
    }

    /** A short way without a screen is drawn, but is no step that a coach would number. */
    private static List<Step> plain(List<Step> steps) {
        return steps.stream().map(s -> isShift(s, steps) ? shift(s) : s).toList();
    }

    private static boolean isShift(Step step, List<Step> steps) {
        return step.kind() == StepKind.CUT
                && step.way().get(0).distanceTo(step.end()) < LEAST_NUMBERED_METRES
                && steps.stream()
                        .noneMatch(s -> s.kind() == StepKind.SCREEN && s.other().orElse(-1) == step.player());
    }

    private static Step shift(Step s) {
        return new Step(
                StepKind.SHIFT,
                s.player(),
                s.other(),
                s.fromSeconds(),
                s.toSeconds(),
                s.way(),
                s.place(),
                s.target(),
                s.label());
    }

    private Page page() {
        double from = possession.possession().fromSeconds();
        double to = possession.possession().toSeconds();
        List<FloorPoint> places = trails.values().stream()
                .filter(SmoothTrail::attacking)
                .flatMap(t -> t.between(from, to).stream())
                .toList();
        return Page.half(rules, possession.possession().end(), places);
    }

    Diagram draw() {
        List<PanelPlan> plans = new PanelCutter(steps, possession.possession().fromSeconds(), this::layout).cut();
        String title = "Possession " + possession.possession().number();
        List<DiagramPanel> panels = new ArrayList<>();
        List<Step> before = new ArrayList<>();
        int number = 1;
        for (int k = 0; k < plans.size(); k++) {
            PanelPlan plan = plans.get(k);
            PanelLayout layout = layout(plan, before, number);
            String name = plans.size() == 1 ? title : title + ", drawing " + (k + 1) + " of " + plans.size();
            panels.add(panel(name, plan, layout, number));
            number +=
                    (int) plan.steps().stream().filter(s -> s.kind().numbered()).count();
            before.addAll(plan.steps());
        }
        return new Diagram(title, panels);
    }

    private PanelLayout layout(PanelPlan plan, List<Step> before, int firstNumber) {
        Map<Integer, Double> free = new HashMap<>();
        before.stream().filter(s -> s.kind().moves()).forEach(s -> free.merge(s.player(), s.toSeconds(), Math::max));
        List<PlayerDot> dots = new ArrayList<>();
        for (SmoothTrail trail : trails.values()) {
            double at = Math.max(plan.startSeconds(), free.getOrDefault(trail.trackId(), Double.NEGATIVE_INFINITY));
            if (trail.first() > plan.endSeconds() || trail.last() < plan.startSeconds()) {
                continue;
            }
            FloorPoint place = plan.steps().stream()
                    .filter(s -> s.player() == trail.trackId() && !s.way().isEmpty())
                    .findFirst()
                    .map(s -> s.way().get(0))
                    .orElseGet(() -> trail.at(at));
            dots.add(new PlayerDot(trail.trackId(), trail.attacking(), labels.of(trail.trackId()), page.at(place)));
        }
        return new PanelLayout(page, dots, plan.steps(), firstNumber);
    }

    private DiagramPanel panel(String title, PanelPlan plan, PanelLayout layout, int firstNumber) {
        List<String> sentences = plan.steps().stream()
                .filter(s -> s.kind().numbered())
                .map(words::of)
                .toList();
        String description = describe(layout, sentences, firstNumber);
        SvgText svg = new SvgText(Page.WIDTH, page.height(), title, description);
        new PanelDrawing(svg, page, layout).draw();
        return new DiagramPanel(
                title, plan.startSeconds(), plan.endSeconds(), sentences, firstNumber, description, svg.finish());
    }

    private String describe(PanelLayout layout, List<String> sentences, int firstNumber) {
        String attackers = layout.dots().stream()
                .filter(PlayerDot::attacking)
                .map(d -> d.label() + " at " + words.place(page.place(d.at())))
                .collect(Collectors.joining(", "));
        StringBuilder text = new StringBuilder("Half court from above, rim at the top. Attackers: " + attackers + ".");
        for (int k = 0; k < sentences.size(); k++) {
            text.append(' ')
                    .append(firstNumber + k)
                    .append(". ")
                    .append(sentences.get(k))
                    .append('.');
        }
        return text.toString();
    }
}
