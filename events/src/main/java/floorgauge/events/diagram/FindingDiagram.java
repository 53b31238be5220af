package floorgauge.events.diagram;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.KeyFrame;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.step.SmoothTrail;
import floorgauge.events.step.Spots;
import floorgauge.events.step.Step;
import floorgauge.events.step.StepReader;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** The drawing of one finding. */
final class FindingDiagram {

    /** Ways are shown this long before and after what the finding spans. */
    private static final double AROUND_SECONDS = 0.4;

    private final RuleSet rules;
    private final PossessionFindings possession;
    private final Finding finding;
    private final PlayerLabels labels;
    private final Map<Integer, SmoothTrail> trails;
    private final List<Step> steps;
    private final double moment;
    private final double from;
    private final double to;
    private final Set<Integer> holders;
    private final Page page;

    FindingDiagram(RuleSet rules, PossessionFindings possession, Finding finding, PlayerLabels labels) {
        this.rules = rules;
        this.possession = possession;
        this.finding = finding;
        this.labels = labels;
        StepReader reader = new StepReader(possession);
        this.trails = reader.trails();
        this.moment = whileSeen(decisiveMoment(finding));
        this.from = Math.min(moment, finding.fromSeconds()) - AROUND_SECONDS;
        this.to = Math.max(moment, finding.toSeconds()) + AROUND_SECONDS;
        this.holders =
                finding.roles().stream().map(RoleHolder::trackId).collect(Collectors.toCollection(LinkedHashSet::new));
        this.steps = reader.read().stream().filter(this::isShown).toList();
        this.page = Page.around(rules, possession.possession().end(), places());
    }

    /** The moment whose places are drawn: that of the first distance or area, else the middle frame, else the middle of the span. */
    static double decisiveMoment(Finding finding) {
        for (Mark mark : finding.marks()) {
            if (mark instanceof Mark.Distance distance) {
                return distance.timeSeconds();
            }
            if (mark instanceof Mark.DistanceToPoint distance) {
                return distance.timeSeconds();
            }
            if (mark instanceof Mark.Area area) {
                return area.timeSeconds();
            }
        }
        List<KeyFrame> frames = finding.frames();
        return frames.isEmpty()
                ? (finding.fromSeconds() + finding.toSeconds()) / 2
                : frames.get(frames.size() / 2).timeSeconds();
    }

    /** A lost ball may arrive after the possession, whose trails end with it. */
    private double whileSeen(double seconds) {
        double first =
                trails.values().stream().mapToDouble(SmoothTrail::first).min().orElse(seconds);
        double last =
                trails.values().stream().mapToDouble(SmoothTrail::last).max().orElse(seconds);
        return Math.max(first, Math.min(last, seconds));
    }

    private boolean isShown(Step step) {
        boolean concerns = holders.contains(step.player())
                && (step.kind().moves() || holders.contains(step.other().orElse(step.player())));
        return concerns && step.fromSeconds() < to && step.toSeconds() > from;
    }

    private List<FloorPoint> places() {
        List<FloorPoint> places = new ArrayList<>();
        for (int id : holders) {
            if (trails.containsKey(id)) {
                places.addAll(trails.get(id).between(from, to));
            }
        }
        return places;
    }

    Diagram draw() {
        List<PlayerDot> dots = new ArrayList<>();
        for (SmoothTrail trail : trails.values()) {
            if (trail.first() <= moment && trail.last() >= moment) {
                dots.add(new PlayerDot(
                        trail.trackId(), trail.attacking(), labels.of(trail.trackId()), page.at(trail.at(moment))));
            }
        }
        StepWords words =
                new StepWords(labels, new Spots(rules, possession.possession().end()));
        List<String> sentences =
                steps.stream().filter(s -> s.kind().numbered()).map(words::of).toList();
        String measured = finding.marks().stream()
                .map(DimensionWords::of)
                .flatMap(java.util.Optional::stream)
                .collect(Collectors.joining("; "));
        String description = finding.sentence() + (measured.isEmpty() ? "" : " Measured: " + measured + ".");
        SvgText svg = new SvgText(Page.WIDTH, page.height(), finding.label(), description);
        new MomentDrawing(svg, page, dots, trails, steps, finding, moment, from, to).draw();
        return new Diagram(
                finding.label(),
                List.of(new DiagramPanel(
                        finding.label(), Math.max(0, from), to, sentences, 1, description, svg.finish())));
    }
}
