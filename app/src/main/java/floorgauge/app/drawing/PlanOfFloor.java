package floorgauge.app.drawing;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.events.diagram.PlayerLabels;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.KeyFrame;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Trail;
import floorgauge.events.finding.TrailPoint;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The floor from above as line work: the court's lines, trails, players, and what was measured. */
public final class PlanOfFloor {

    /** Radius of a body's envelope on the floor, metres. */
    private static final double ENVELOPE_METRES = 0.25;

    private static final double DIMENSION_OFFSET = 15;
    private static final double SCREEN_BAR_HALF_LENGTH = 9;

    private final RuleSet rules;
    private final PossessionFindings possession;
    private final PlayerLabels labels;

    /** A plan on which tracks are called by their numbers. */
    public PlanOfFloor(RuleSet rules, PossessionFindings possession) {
        this(rules, possession, PlayerLabels.trackIds());
    }

    /** @param labels what stands in players' marks */
    public PlanOfFloor(RuleSet rules, PossessionFindings possession, PlayerLabels labels) {
        this.rules = rules;
        this.possession = possession;
        this.labels = labels;
    }

    /** The whole possession: everyone's trail, marks where each was last seen. */
    public String ofPossession() {
        double from = possession.possession().fromSeconds();
        double to = possession.possession().toSeconds();
        PlanFrame plan = PlanFrame.half(rules, possession.possession().end(), places(Set.of(), from, to));
        Svg svg = new Svg(0, 0, plan.width(), plan.height(), "plan", describePossession());
        CourtLines.draw(svg, plan);
        for (Trail trail : possession.trails()) {
            TrailDrawing.draw(svg, plan, trail, from, to);
        }
        for (Trail trail : possession.trails()) {
            List<TrailPoint> points = trail.points();
            if (!points.isEmpty()) {
                FloorPoint last = points.get(points.size() - 1).position().mean();
                PlayerMark.draw(svg, plan.x(last), plan.y(last), labels.of(trail.trackId()), trail.attacking());
            }
        }
        return svg.finish();
    }

    /** One finding, the part of the floor it took place on: trails of those who had a role, everyone's place at the decisive moment, the distances measured then. */
    public String of(Finding finding) {
        double moment = decisiveMoment(finding);
        Set<Integer> holders = finding.roles().stream().map(RoleHolder::trackId).collect(Collectors.toSet());
        PlanFrame plan = PlanFrame.around(
                rules, possession.possession().end(), places(holders, finding.fromSeconds(), finding.toSeconds()));
        Svg svg = new Svg(0, 0, plan.width(), plan.height(), "plan", describe(finding, moment));
        CourtLines.draw(svg, plan);
        for (Trail trail : possession.trails()) {
            if (holders.contains(trail.trackId())) {
                TrailDrawing.draw(svg, plan, trail, finding.fromSeconds(), finding.toSeconds());
            }
        }
        for (Trail trail : possession.trails()) {
            TrailDrawing.at(trail, moment)
                    .ifPresent(p -> player(svg, plan, trail, p, holders.contains(trail.trackId())));
        }
        screenBars(svg, plan, finding, moment);
        for (Mark mark : finding.marks()) {
            draw(svg, plan, mark);
        }
        return svg.finish();
    }

    /** The moment whose places are drawn: that of the first distance, else the middle frame, else the middle of the span. */
    public static double decisiveMoment(Finding finding) {
        for (Mark mark : finding.marks()) {
            if (mark instanceof Mark.Distance distance) {
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

    /** Where these tracks, or everyone's where none is named, were between two times. */
    private List<FloorPoint> places(Set<Integer> trackIds, double fromSeconds, double toSeconds) {
        return possession.trails().stream()
                .filter(t -> trackIds.isEmpty() || trackIds.contains(t.trackId()))
                .flatMap(t -> t.points().stream())
                .filter(p -> p.timeSeconds() >= fromSeconds && p.timeSeconds() <= toSeconds)
                .map(p -> p.position().mean())
                .toList();
    }

    private void player(Svg svg, PlanFrame plan, Trail trail, TrailPoint point, boolean holder) {
        FloorPoint place = point.position().mean();
        svg.group(holder ? "player" : "player bystander");
        if (holder && !trail.attacking()) {
            svg.circle(plan.x(place), plan.y(place), ENVELOPE_METRES * plan.scale(), "envelope");
        }
        PlayerMark.draw(svg, plan.x(place), plan.y(place), labels.of(trail.trackId()), trail.attacking());
        svg.end();
    }

    /** The trade's sign for a screen: a bar across the screener's way, here across the line to whom it was set for. */
    private void screenBars(Svg svg, PlanFrame plan, Finding finding, double moment) {
        Optional<FloorPoint> against = finding.roles().stream()
                .filter(h -> h.role() == Role.USER_DEFENDER)
                .findFirst()
                .flatMap(h -> place(h.trackId(), moment));
        for (RoleHolder holder : finding.roles()) {
            boolean screener = holder.role() == Role.SCREENER || holder.role() == Role.SECOND_SCREENER;
            Optional<FloorPoint> place = place(holder.trackId(), moment);
            if (screener && place.isPresent() && against.isPresent()) {
                bar(svg, plan.at(place.get()), plan.at(against.get()));
            }
        }
    }

    private static void bar(Svg svg, double[] screener, double[] defender) {
        double dx = defender[0] - screener[0];
        double dy = defender[1] - screener[1];
        double length = Math.hypot(dx, dy);
        if (length == 0) {
            return;
        }
        double x = screener[0] + dx / length * SCREEN_BAR_HALF_LENGTH;
        double y = screener[1] + dy / length * SCREEN_BAR_HALF_LENGTH;
        double ax = -dy / length * SCREEN_BAR_HALF_LENGTH;
        double ay = dx / length * SCREEN_BAR_HALF_LENGTH;
        svg.line(x - ax, y - ay, x + ax, y + ay, "screen-bar");
    }

    private void draw(Svg svg, PlanFrame plan, Mark mark) {
        if (mark instanceof Mark.Distance distance) {
            Optional<FloorPoint> from = place(distance.fromTrackId(), distance.timeSeconds());
            Optional<FloorPoint> to = place(distance.toTrackId(), distance.timeSeconds());
            if (from.isPresent() && to.isPresent()) {
                dimension(svg, plan, from.get(), to.get(), distance.figure());
            }
        } else if (mark instanceof Mark.DistanceToPoint distance) {
            place(distance.fromTrackId(), distance.timeSeconds())
                    .ifPresent(from -> dimension(svg, plan, from, distance.to(), distance.figure()));
        } else if (mark instanceof Mark.Area area) {
            area(svg, plan, area);
        }
    }

    private static void dimension(Svg svg, PlanFrame plan, FloorPoint from, FloorPoint to, Figure figure) {
        MeasuredEnds ends = MeasuredEnds.of(from, to, figure);
        double[] a = plan.at(ends.from());
        double[] b = plan.at(ends.to());
        new DimensionLine(
                        a[0],
                        a[1],
                        b[0],
                        b[1],
                        DIMENSION_OFFSET,
                        FigureText.of(figure),
                        FigureText.isBeyond(figure),
                        plan.width())
                .draw(svg);
    }

    private void area(Svg svg, PlanFrame plan, Mark.Area area) {
        List<double[]> corners = new ArrayList<>();
        for (int id : area.trackIds()) {
            place(id, area.timeSeconds()).ifPresent(p -> corners.add(plan.at(p)));
        }
        if (corners.size() < 3) {
            return;
        }
        boolean beyond = FigureText.isBeyond(area.figure());
        svg.polygon(corners, beyond ? "area beyond" : "area");
        double x = corners.stream().mapToDouble(c -> c[0]).average().orElseThrow();
        double y = corners.stream().mapToDouble(c -> c[1]).average().orElseThrow();
        svg.group(beyond ? "dimension beyond" : "dimension");
        svg.text(x, y, "middle", "dimension-label", FigureText.of(area.figure()));
        svg.end();
    }

    private Optional<FloorPoint> place(int trackId, double timeSeconds) {
        return possession.trails().stream()
                .filter(t -> t.trackId() == trackId)
                .findFirst()
                .flatMap(t -> TrailDrawing.at(t, timeSeconds))
                .map(TrailPoint::position)
                .map(FloorEstimate::mean);
    }

    private String describePossession() {
        return "Plan of the floor from above, the rim under attack at the top, with the ways of attackers "
                + numbers(possession.possession().attackers()) + " and defenders "
                + numbers(possession.possession().defenders()) + ".";
    }

    private String describe(Finding finding, double moment) {
        String roles = finding.roles().stream()
                .map(h -> h.role().words() + " number " + labels.of(h.trackId()))
                .collect(Collectors.joining(", "));
        String distances = finding.marks().stream()
                .filter(m -> m instanceof Mark.Distance)
                .map(m -> (Mark.Distance) m)
                .map(d -> d.figure().name() + " between " + labels.of(d.fromTrackId()) + " and "
                        + labels.of(d.toTrackId()) + " " + FigureText.of(d.figure()))
                .collect(Collectors.joining("; "));
        return "Plan of the floor from above at " + FigureText.time(moment) + ": " + roles + "."
                + (distances.isEmpty() ? "" : " Measured: " + distances + ".");
    }

    private String numbers(Collection<Integer> ids) {
        return ids.isEmpty() ? "none" : ids.stream().map(labels::of).collect(Collectors.joining(", "));
    }
}
