package floorgauge.events.diagram;

import floorgauge.court.floor.FloorPoint;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.step.SmoothTrail;
import floorgauge.events.step.Step;
import floorgauge.events.step.StepKind;
import floorgauge.events.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** One moment of a finding: ways before and after it, marks where everyone was, dimensions. */
final class MomentDrawing {

    private static final double SIMPLER_METRES = 0.1;
    private static final double PEN_STEP = 0.5;
    private static final double LEAST_WAY = 1.6;
    private static final double PEN = 0.38;
    private static final double DEFENDER_PEN = 0.3;
    private static final String DEFENDER_DASHES = "0.3 0.8";
    private static final double ARROW = 1.75;
    private static final double SAME_MOMENT_SECONDS = 0.1;
    private static final double GHOST_RADIUS = 0.55;
    private static final double BAR_HALF = 2.1;
    private static final double BAR_PEN = 0.75;
    private static final double SHOT_LENGTH = 6;
    private static final double BELOW_AREA = 3.2;

    private final SvgText svg;
    private final Page page;
    private final List<PlayerDot> dots;
    private final Map<Integer, SmoothTrail> trails;
    private final List<Step> steps;
    private final Finding finding;
    private final double moment;
    private final double from;
    private final double to;
    private final Set<Integer> holders = new TreeSet<>();
    private final List<List<double[]>> lines = new ArrayList<>();

    MomentDrawing(
            SvgText svg,
            Page page,
            List<PlayerDot> dots,
            Map<Integer, SmoothTrail> trails,
            List<Step> steps,
            Finding finding,
            double moment,
            double from,
            double to) {
        this.svg = svg;
        this.page = page;
        this.dots = dots;
        this.trails = trails;
        this.steps = steps;
        this.finding = finding;
        this.moment = moment;
        this.from = from;
        this.to = to;
        finding.roles().forEach(r -> holders.add(r.trackId()));
    }

    void draw() {
        FloorLines.draw(svg, page);
        finding.marks().forEach(this::area);
        for (int id : holders) {
            if (trails.containsKey(id)) {
                way(trails.get(id), from, moment, false);
                way(trails.get(id), moment, to, true);
            }
        }
        steps.stream()
                .filter(s -> s.kind() == StepKind.PASS || s.kind() == StepKind.TURNOVER)
                .forEach(this::pass);
        steps.stream().filter(s -> s.kind() == StepKind.HANDOFF).forEach(this::handoff);
        steps.stream().filter(s -> s.kind() == StepKind.SHOT).forEach(this::shot);
        screenBar();
        DotPen pen = new DotPen(svg, page, dots, lines);
        svg.group("fg-bystanders", "opacity=\"0.5\"");
        dots.stream().filter(d -> !holders.contains(d.trackId())).forEach(pen::draw);
        svg.end();
        DimensionDrawing dimensions = new DimensionDrawing(
                svg,
                page,
                dots.stream().filter(d -> holders.contains(d.trackId())).toList(),
                lines);
        spans(dimensions);
        dots.stream().filter(d -> holders.contains(d.trackId())).forEach(pen::draw);
    }

    private void way(SmoothTrail trail, double start, double end, boolean after) {
        List<double[]> raw = new ArrayList<>();
        trail.between(start, end).forEach(p -> raw.add(page.at(p)));
        List<double[]> line = Polyline.round(Polyline.simplified(raw, SIMPLER_METRES * page.scale()), PEN_STEP);
        double radius = (trail.attacking() ? PlayerDot.RING_RADIUS : PlayerDot.CROSS_RADIUS) + 0.3;
        double whole = Polyline.length(line);
        if (whole < radius + LEAST_WAY) {
            return;
        }
        List<double[]> shown = after ? Polyline.piece(line, radius, whole) : Polyline.piece(line, 0, whole - radius);
        boolean ball = trail.attacking() && hasBall(trail.trackId(), start, end);
        List<double[]> drawn = ball ? Polyline.zigzag(shown, 0.62, 1.15, 0.4, after ? ARROW + 0.8 : 0.4) : shown;
        List<double[]> cut =
                after && !ball ? Polyline.piece(drawn, 0, Math.max(0.1, Polyline.length(drawn) - ARROW * 0.7)) : drawn;
        svg.line(cut, trail.attacking() ? PEN : DEFENDER_PEN, trail.attacking() ? "" : DEFENDER_DASHES);
        if (after) {
            Arrowhead.draw(svg, shown, ARROW, trail.attacking() ? 0.68 : 0.45);
        }
        lines.add(shown);
    }

    private boolean hasBall(int id, double start, double end) {
        return steps.stream()
                .anyMatch(s -> s.kind() == StepKind.DRIBBLE
                        && s.player() == id
                        && Math.min(end, s.toSeconds()) - Math.max(start, s.fromSeconds()) > (end - start) / 2);
    }

    private void pass(Step step) {
        List<double[]> line =
                List.of(page.at(step.place()), page.at(step.target().orElse(step.place())));
        double whole = Polyline.length(line);
        double room = PlayerDot.RING_RADIUS + 0.35;
        if (whole > 2 * room + LEAST_WAY) {
            List<double[]> shown = Polyline.piece(line, room, whole - room);
            svg.line(Polyline.piece(shown, 0, Polyline.length(shown) - ARROW * 0.7), PEN, PanelDrawing.PASS_DASHES);
            Arrowhead.draw(svg, shown, ARROW, 0.68);
            lines.add(shown);
        }
    }

    /** Two bars across the line between giver and receiver, where they meet. */
    private void handoff(Step step) {
        double[] from = page.at(step.place());
        double[] to = page.at(step.target().orElse(step.place()));
        double[] u = Polyline.unit(from, to);
        double[] middle = Polyline.between(from, to, 0.5);
        for (double behind : new double[] {-0.45, 0.45}) {
            svg.line(
                    List.of(
                            Arrowhead.back(middle, u, behind, BAR_HALF * 0.8),
                            Arrowhead.back(middle, u, behind, -BAR_HALF * 0.8)),
                    PEN,
                    "");
        }
    }

    /** A doubled arrow toward the rim. */
    private void shot(Step step) {
        double[] from = page.at(step.place());
        double[] rim = page.at(page.rules().rim(page.end()));
        double[] u = Polyline.unit(from, rim);
        double near = PlayerDot.RING_RADIUS + 0.4;
        double far = Math.min(near + SHOT_LENGTH, Polyline.distance(from, rim));
        if (far - near > ARROW) {
            double[] a = {from[0] + u[0] * near, from[1] + u[1] * near};
            double[] b = {from[0] + u[0] * far, from[1] + u[1] * far};
            for (double aside : new double[] {-0.32, 0.32}) {
                svg.line(
                        List.of(Arrowhead.back(a, u, 0, aside), Arrowhead.back(b, u, ARROW * 0.8, aside)),
                        DEFENDER_PEN,
                        "");
            }
            Arrowhead.draw(svg, List.of(a, b), ARROW, 1);
        }
    }

    /** The bar of each screener, across the line to the defender whom the screen is for. */
    private void screenBar() {
        Optional<FloorPoint> against = place(holder(Role.USER_DEFENDER), moment);
        for (RoleHolder holder : finding.roles()) {
            boolean screener = holder.role() == Role.SCREENER || holder.role() == Role.SECOND_SCREENER;
            Optional<FloorPoint> at = place(Optional.of(holder.trackId()), moment);
            if (screener && at.isPresent() && against.isPresent()) {
                double[] p = page.at(at.get());
                double[] u = Polyline.unit(p, page.at(against.get()));
                double reach = PlayerDot.RING_RADIUS + 0.45;
                double[] middle = {p[0] + u[0] * reach, p[1] + u[1] * reach};
                svg.line(
                        List.of(
                                new double[] {middle[0] - u[1] * BAR_HALF, middle[1] + u[0] * BAR_HALF},
                                new double[] {middle[0] + u[1] * BAR_HALF, middle[1] - u[0] * BAR_HALF}),
                        BAR_PEN,
                        "");
            }
        }
    }

    private Optional<Integer> holder(Role role) {
        return finding.roles().stream()
                .filter(h -> h.role() == role)
                .map(RoleHolder::trackId)
                .findFirst();
    }

    private Optional<FloorPoint> place(Optional<Integer> trackId, double seconds) {
        return trackId.map(trails::get).map(t -> t.at(seconds));
    }

    private void spans(DimensionDrawing dimensions) {
        for (Mark mark : finding.marks()) {
            if (mark instanceof Mark.Distance d) {
                Optional<FloorPoint> a = place(Optional.of(d.fromTrackId()), d.timeSeconds());
                Optional<FloorPoint> b = place(Optional.of(d.toTrackId()), d.timeSeconds());
                if (a.isPresent() && b.isPresent()) {
                    ghosts(d.timeSeconds(), a.get(), b.get());
                    dimensions.draw(MeasuredSpan.between(a.get(), b.get(), d.figure()));
                }
            } else if (mark instanceof Mark.DistanceToPoint d) {
                place(Optional.of(d.fromTrackId()), d.timeSeconds())
                        .ifPresent(a -> dimensions.draw(new MeasuredSpan(a, d.to(), d.figure())));
            } else if (mark instanceof Mark.Area area && corners(area).size() > 2) {
                List<double[]> corners = corners(area);
                dimensions.label(
                        new double[] {
                            corners.stream().mapToDouble(c -> c[0]).average().orElseThrow(),
                            Math.min(
                                    page.height() - BELOW_AREA / 2,
                                    corners.stream()
                                                    .mapToDouble(c -> c[1])
                                                    .max()
                                                    .orElseThrow()
                                            + BELOW_AREA)
                        },
                        Words.of(area.figure()),
                        new MeasuredSpan(new FloorPoint(0, 0), new FloorPoint(0, 0), area.figure()).isBeyond());
            }
        }
    }

    /** Small rings where two were at another time than that of their marks. */
    private void ghosts(double seconds, FloorPoint a, FloorPoint b) {
        if (Math.abs(seconds - moment) > SAME_MOMENT_SECONDS) {
            svg.ring(page.at(a), GHOST_RADIUS, 0.22);
            svg.ring(page.at(b), GHOST_RADIUS, 0.22);
        }
    }

    private void area(Mark mark) {
        if (mark instanceof Mark.Area area && corners(area).size() > 2) {
            List<double[]> corners = new ArrayList<>(corners(area));
            corners.add(corners.get(0));
            svg.line(corners, 0.25, "");
        }
    }

    private List<double[]> corners(Mark.Area area) {
        return area.trackIds().stream()
                .map(id -> place(Optional.of(id), area.timeSeconds()))
                .flatMap(Optional::stream)
                .map(page::at)
                .toList();
    }
}
