package floorgauge.events.diagram;

import floorgauge.court.floor.FloorPoint;
import floorgauge.events.step.Step;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Where everything of one drawing stands: marks at the start of each player's steps, strokes, numbers, and how crowded that is. */
final class PanelLayout {

    private static final double SIMPLER_METRES = 0.16;
    private static final double PEN_STEP = 0.5;
    private static final double TRIM_GAP = 0.35;
    private static final double SHORTEST = 1.0;
    private static final double NEAR_MARK_METRES = 1.1;
    private static final double CATCH_GAP = 0.7;
    private static final double AFTER_BAR = 0.9;
    private static final double SHOT_LENGTH = 3.4;
    private static final double STANDING_BAR = 0.7;
    private static final double HANDOFF_GAP = 1.0;

    private final Page page;
    private final List<PlayerDot> dots;
    private final Map<Integer, PlayerDot> byTrack = new HashMap<>();
    private final List<Stroke> strokes = new ArrayList<>();
    private final Map<Integer, double[]> now = new HashMap<>();
    private final Map<Integer, Boolean> onMark = new HashMap<>();
    private final List<PlacedNumber> numbers;
    private final double conflicts;

    /**
     * @param page how the floor lies
     * @param dots every player's mark, not yet moved apart
     * @param steps of this drawing, in order of time
     * @param firstNumber number of its first numbered step
     */
    PanelLayout(Page page, List<PlayerDot> dots, List<Step> steps, int firstNumber) {
        this.page = page;
        this.dots = dots;
        DotRelaxer.relax(dots);
        for (PlayerDot dot : dots) {
            byTrack.put(dot.trackId(), dot);
            now.put(dot.trackId(), dot.at());
            onMark.put(dot.trackId(), true);
        }
        steps.forEach(s -> stroke(s).ifPresent(strokes::add));
        NumberPlacer placer = new NumberPlacer(page, dots, strokes);
        this.numbers = placer.place(steps, firstNumber);
        this.conflicts = placer.conflicts() + crowding();
    }

    List<PlayerDot> dots() {
        return dots;
    }

    List<Stroke> strokes() {
        return strokes;
    }

    List<PlacedNumber> numbers() {
        return numbers;
    }

    /** 0 for a clear drawing; a conflict that a reader stumbles over counts about 1. */
    double conflicts() {
        return conflicts;
    }

    private Optional<Stroke> stroke(Step step) {
        if (!byTrack.containsKey(step.player())) {
            return Optional.empty();
        }
        return switch (step.kind()) {
            case DRIBBLE, CUT, SHIFT -> way(step, Stroke.End.ARROW);
            case SCREEN -> step.way().isEmpty() ? Optional.of(standing(step)) : way(step, Stroke.End.BAR);
            case PASS, TURNOVER -> pass(step);
            case HANDOFF -> Optional.of(handoff(step));
            case SHOT -> Optional.of(shot(step));
        };
    }

    private Optional<Stroke> way(Step step, Stroke.End end) {
        List<double[]> line = new ArrayList<>();
        double[] start = now.get(step.player());
        line.add(start);
        for (FloorPoint p : step.way().subList(1, step.way().size())) {
            line.add(page.at(p));
        }
        List<double[]> round = Polyline.round(Polyline.simplified(line, SIMPLER_METRES * page.scale()), PEN_STEP);
        boolean fromMark = onMark.get(step.player());
        double from = fromMark ? leaves(round, start, PlayerDot.RING_RADIUS + TRIM_GAP) : AFTER_BAR;
        double to = reaches(round, step.player());
        if (to - from < SHORTEST) {
            return Optional.empty();
        }
        Stroke stroke = new Stroke(step, Polyline.piece(round, from, to), end);
        now.put(step.player(), stroke.tip());
        onMark.put(step.player(), false);
        return Optional.of(stroke);
    }

    /** Length at which a line leaves a disc about its start for good. */
    private static double leaves(List<double[]> line, double[] centre, double radius) {
        double whole = Polyline.length(line);
        double last = 0;
        for (double s = 0; s <= whole; s += 0.1) {
            if (Polyline.distance(Polyline.at(line, s), centre) < radius) {
                last = s;
            }
        }
        return last;
    }

    /** Length at which a line ends so that its arrow stays clear of the other marks. */
    private double reaches(List<double[]> line, int own) {
        double to = Polyline.length(line);
        double least = to * 0.6;
        while (to > least && touches(Polyline.at(line, to), own)) {
            to -= 0.2;
        }
        return to;
    }

    private boolean touches(double[] tip, int own) {
        for (PlayerDot dot : dots) {
            double room = dot.attacking() ? dot.radius() + 0.3 : PlayerDot.CROSS_HALF + 0.2;
            if (dot.trackId() != own && Polyline.distance(tip, dot.at()) < room) {
                return true;
            }
        }
        return false;
    }

    private Stroke standing(Step step) {
        double[] at = now.get(step.player());
        double[] toward = page.at(step.target().orElse(page.rules().rim(page.end())));
        double[] u = Polyline.unit(at, toward);
        double radius = onMark.get(step.player()) ? PlayerDot.RING_RADIUS : 0;
        double[] edge = {at[0] + u[0] * radius, at[1] + u[1] * radius};
        double[] bar = {at[0] + u[0] * (radius + STANDING_BAR), at[1] + u[1] * (radius + STANDING_BAR)};
        return new Stroke(step, List.of(edge, bar), Stroke.End.BAR);
    }

    /** Where a player is for a pass: on his mark or at the end of his way, unless he has drifted from there. */
    private double[] whereNow(int trackId, double[] measured) {
        double[] at = now.get(trackId);
        return Polyline.distance(at, measured) < NEAR_MARK_METRES * page.scale() ? at : measured;
    }

    private Optional<Stroke> pass(Step step) {
        int receiver = step.other().orElseThrow();
        if (!byTrack.containsKey(receiver)) {
            return Optional.empty();
        }
        double[] from = whereNow(step.player(), page.at(step.place()));
        double[] to = whereNow(receiver, page.at(step.target().orElse(step.place())));
        double start = room(step.player(), from);
        double stop = Polyline.distance(from, to) - room(receiver, to);
        List<double[]> line = List.of(from, to);
        return stop - start < SHORTEST
                ? Optional.empty()
                : Optional.of(new Stroke(step, Polyline.piece(line, start, stop), Stroke.End.ARROW));
    }

    private double room(int trackId, double[] at) {
        boolean mark = Polyline.distance(at, byTrack.get(trackId).at()) < PlayerDot.RING_RADIUS;
        return mark ? PlayerDot.RING_RADIUS + TRIM_GAP : CATCH_GAP;
    }

    private Stroke handoff(Step step) {
        double[] from = whereNow(step.player(), page.at(step.place()));
        double[] to = page.at(step.target().orElse(step.place()));
        double[] u = Polyline.distance(from, to) > 0.4 ? Polyline.unit(from, to) : new double[] {0, 1};
        double near = room(step.player(), from) - TRIM_GAP;
        double far = near + HANDOFF_GAP;
        return new Stroke(
                step,
                List.of(
                        new double[] {from[0] + u[0] * near, from[1] + u[1] * near},
                        new double[] {from[0] + u[0] * far, from[1] + u[1] * far}),
                Stroke.End.HANDOFF_BARS);
    }

    private Stroke shot(Step step) {
        double[] from = whereNow(step.player(), page.at(step.place()));
        double[] rim = page.at(page.rules().rim(page.end()));
        double[] u = Polyline.unit(from, rim);
        double near = room(step.player(), from);
        double far = near + Math.min(SHOT_LENGTH, Math.max(SHORTEST, Polyline.distance(from, rim) - near));
        return new Stroke(
                step,
                List.of(
                        new double[] {from[0] + u[0] * near, from[1] + u[1] * near},
                        new double[] {from[0] + u[0] * far, from[1] + u[1] * far}),
                Stroke.End.ARROW);
    }

    private double crowding() {
        double sum = 0;
        for (int i = 0; i < strokes.size(); i++) {
            Stroke a = strokes.get(i);
            for (int j = i + 1; j < strokes.size(); j++) {
                Stroke b = strokes.get(j);
                int crossings = Polyline.crossings(a.line(), b.line());
                boolean samePlayer = a.step().player() == b.step().player()
                        && a.step().kind().moves()
                        && b.step().kind().moves();
                sum += samePlayer ? 1.2 * crossings + goesBack(a, b) : 0.4 * Math.min(crossings, 3);
            }
            for (PlayerDot dot : dots) {
                boolean own = dot.trackId() == a.step().player()
                        || dot.trackId() == a.step().other().orElse(-1);
                double room = dot.attacking() ? PlayerDot.RING_RADIUS : PlayerDot.CROSS_HALF * 0.8;
                if (!own && Polyline.distance(dot.at(), a.line()) < room) {
                    sum += dot.attacking() ? 0.6 : 0.15;
                }
            }
        }
        return sum;
    }

    /** A way that goes back along the player's own way before. */
    private static double goesBack(Stroke a, Stroke b) {
        double whole = Polyline.length(b.line());
        double near = 0;
        for (double s = Math.min(whole, 3); s <= whole; s += 1) {
            near += Polyline.distance(Polyline.at(b.line(), s), a.line()) < 1.2 ? 0.25 : 0;
        }
        return near;
    }
}
