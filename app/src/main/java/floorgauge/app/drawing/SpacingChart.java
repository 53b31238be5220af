package floorgauge.app.drawing;

import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.SpacingSample;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Spacing over time: the least distance between team-mates with its error, the mean, and the floor they span. Time during
 * an action is hatched, since nothing is held against the attackers then.
 */
public final class SpacingChart {

    private static final double WIDTH = 640;
    private static final double LEFT = 30;
    private static final double RIGHT = 104;
    private static final double DISTANCE_TOP = 8;
    private static final double DISTANCE_HEIGHT = 104;
    private static final double AREA_TOP = 130;
    private static final double AREA_HEIGHT = 48;
    private static final double HEIGHT = 204;

    /** Samples farther apart than this are not joined. */
    private static final double GAP_SECONDS = 0.15;

    private final List<SpacingSample> samples;
    private final double crowdedMetres;
    private final double collapsedSquareMetres;
    private final double from;
    private final double to;
    private final double mostMetres;
    private final double mostSquareMetres;

    private SpacingChart(List<SpacingSample> samples, double crowdedMetres, double collapsedSquareMetres) {
        this.samples = samples;
        this.crowdedMetres = crowdedMetres;
        this.collapsedSquareMetres = collapsedSquareMetres;
        from = samples.get(0).timeSeconds();
        to = Math.max(from + 0.04, samples.get(samples.size() - 1).timeSeconds());
        double metres = crowdedMetres;
        double area = collapsedSquareMetres;
        for (SpacingSample sample : samples) {
            metres = Math.max(metres, sample.meanNearestMetres().orElse(0));
            area = Math.max(area, sample.hullSquareMetres());
        }
        mostMetres = 2 * Math.ceil(metres / 2 + 0.25);
        mostSquareMetres = 20 * Math.ceil(area / 20 + 0.1);
    }

    /**
     * Draws the spacing of a possession; empty text where no two attackers were ever seen together.
     *
     * @param crowdedMetres the least distance a team's standards ask for
     * @param collapsedSquareMetres the least area they ask for
     */
    public static String of(PossessionFindings possession, double crowdedMetres, double collapsedSquareMetres) {
        boolean seen = possession.spacing().stream()
                .anyMatch(s -> s.leastNearestMetres().isPresent());
        return !seen ? "" : new SpacingChart(possession.spacing(), crowdedMetres, collapsedSquareMetres).draw();
    }

    private String draw() {
        Svg svg = new Svg(0, 0, WIDTH, HEIGHT, "spacing", describe());
        actions(svg);
        scale(svg);
        band(svg);
        curve(
                svg,
                s -> s.meanNearestMetres().isPresent() ? s.meanNearestMetres().getAsDouble() : Double.NaN,
                this::metresY,
                "mean");
        curve(
                svg,
                s -> s.leastNearestMetres().isPresent() ? s.leastNearestMetres().getAsDouble() : Double.NaN,
                this::metresY,
                "least");
        curve(
                svg,
                s -> isCrowded(s) ? s.leastNearestMetres().getAsDouble() : Double.NaN,
                this::metresY,
                "least beyond");
        curve(svg, s -> s.attackers() >= 3 ? s.hullSquareMetres() : Double.NaN, this::areaY, "least");
        curve(svg, s -> isCollapsed(s) ? s.hullSquareMetres() : Double.NaN, this::areaY, "least beyond");
        labels(svg);
        return svg.finish();
    }

    private boolean isCrowded(SpacingSample sample) {
        return !sample.duringAction()
                && sample.leastNearestMetres().isPresent()
                && sample.leastNearestMetres().getAsDouble() < crowdedMetres;
    }

    private boolean isCollapsed(SpacingSample sample) {
        return !sample.duringAction() && sample.attackers() >= 5 && sample.hullSquareMetres() < collapsedSquareMetres;
    }

    private double x(double time) {
        return LEFT + (time - from) / (to - from) * (WIDTH - LEFT - RIGHT);
    }

    private double metresY(double metres) {
        return DISTANCE_TOP + DISTANCE_HEIGHT * (1 - metres / mostMetres);
    }

    private double areaY(double squareMetres) {
        return AREA_TOP + AREA_HEIGHT * (1 - squareMetres / mostSquareMetres);
    }

    private void actions(Svg svg) {
        double start = Double.NaN;
        for (SpacingSample sample : samples) {
            if (sample.duringAction() && Double.isNaN(start)) {
                start = sample.timeSeconds();
            } else if (!sample.duringAction() && !Double.isNaN(start)) {
                hatch(svg, start, sample.timeSeconds());
                start = Double.NaN;
            }
        }
        if (!Double.isNaN(start)) {
            hatch(svg, start, to);
        }
    }

    private void hatch(Svg svg, double start, double end) {
        svg.rectangle(x(start), DISTANCE_TOP, x(end) - x(start), DISTANCE_HEIGHT, "ruled-out");
        svg.rectangle(x(start), AREA_TOP, x(end) - x(start), AREA_HEIGHT, "ruled-out");
    }

    private void scale(Svg svg) {
        double right = WIDTH - RIGHT;
        for (double metres = 0; metres <= mostMetres; metres += 2) {
            svg.line(LEFT - 4, metresY(metres), LEFT, metresY(metres), "rule-line");
            svg.text(LEFT - 6, metresY(metres) + 3.2, "end", "scale", FigureText.decimal(metres, 0));
        }
        svg.line(LEFT, DISTANCE_TOP, LEFT, DISTANCE_TOP + DISTANCE_HEIGHT, "rule-line");
        svg.text(LEFT - 6, AREA_TOP + 3.2, "end", "scale", FigureText.decimal(mostSquareMetres, 0));
        svg.text(LEFT - 6, AREA_TOP + AREA_HEIGHT + 3.2, "end", "scale", "0");
        svg.line(LEFT, AREA_TOP, LEFT, AREA_TOP + AREA_HEIGHT, "rule-line");
        svg.line(LEFT, metresY(crowdedMetres), right, metresY(crowdedMetres), "threshold");
        svg.line(LEFT, areaY(collapsedSquareMetres), right, areaY(collapsedSquareMetres), "threshold");
        double base = AREA_TOP + AREA_HEIGHT + 6;
        svg.line(LEFT, base, right, base, "rule-line");
        double step = to - from <= 12 ? 1 : to - from <= 60 ? 5 : 30;
        for (double time = Math.ceil(from / step) * step; time <= to; time += step) {
            svg.line(x(time), base, x(time), base + 4, "rule-line");
            svg.text(x(time), base + 14, "middle", "scale", FigureText.time(time));
        }
    }

    /** One standard error to either side of the least distance. */
    private void band(Svg svg) {
        List<double[]> upper = new ArrayList<>();
        List<double[]> lower = new ArrayList<>();
        for (SpacingSample sample : samples) {
            if (sample.leastNearestMetres().isPresent()
                    && sample.leastNearestStandardErrorMetres().isPresent()) {
                double value = sample.leastNearestMetres().getAsDouble();
                double error = sample.leastNearestStandardErrorMetres().getAsDouble();
                upper.add(new double[] {x(sample.timeSeconds()), metresY(Math.min(mostMetres, value + error))});
                lower.add(0, new double[] {x(sample.timeSeconds()), metresY(Math.max(0, value - error))});
            } else {
                fill(svg, upper, lower);
            }
        }
        fill(svg, upper, lower);
    }

    private static void fill(Svg svg, List<double[]> upper, List<double[]> lower) {
        if (upper.size() > 1) {
            List<double[]> outline = new ArrayList<>(upper);
            outline.addAll(lower);
            svg.polygon(outline, "error-band");
        }
        upper.clear();
        lower.clear();
    }

    private void curve(Svg svg, Function<SpacingSample, Double> value, Function<Double, Double> y, String style) {
        List<double[]> piece = new ArrayList<>();
        double last = Double.NaN;
        for (SpacingSample sample : samples) {
            double here = value.apply(sample);
            if (Double.isNaN(here) || sample.timeSeconds() - last > GAP_SECONDS) {
                finish(svg, piece, style);
                piece = new ArrayList<>();
            }
            if (!Double.isNaN(here)) {
                piece.add(new double[] {x(sample.timeSeconds()), y.apply(here)});
                last = sample.timeSeconds();
            }
        }
        finish(svg, piece, style);
    }

    private static void finish(Svg svg, List<double[]> piece, String style) {
        if (piece.size() > 1) {
            svg.polyline(piece, "curve " + style);
        }
    }

    private void labels(Svg svg) {
        double x = WIDTH - RIGHT + 5;
        double mean = lastOf(s -> s.meanNearestMetres().orElse(Double.NaN), crowdedMetres + 2);
        double least = lastOf(s -> s.leastNearestMetres().orElse(Double.NaN), crowdedMetres + 1);
        double meanY = metresY(mean) + 3;
        double leastY = metresY(least) + 3;
        double thresholdY = metresY(crowdedMetres) + 3;
        double[] ys = spread(new double[] {meanY, leastY, thresholdY});
        svg.text(x, ys[0], "start", "curve-label", "mean nearest, m");
        svg.text(x, ys[1], "start", "curve-label strong", "least nearest, m");
        svg.text(x, ys[2], "start", "curve-label", "crowded below " + FigureText.decimal(crowdedMetres, 1));
        double[] areaYs = spread(new double[] {
            areaY(lastOf(s -> s.attackers() >= 3 ? s.hullSquareMetres() : Double.NaN, mostSquareMetres / 2)) + 3,
            areaY(collapsedSquareMetres) + 3
        });
        svg.text(x, areaYs[0], "start", "curve-label strong", "floor spanned, m²");
        svg.text(
                x,
                areaYs[1],
                "start",
                "curve-label",
                "collapsed below " + FigureText.decimal(collapsedSquareMetres, 0));
    }

    private double lastOf(Function<SpacingSample, Double> value, double otherwise) {
        for (int i = samples.size() - 1; i >= 0; i--) {
            double here = value.apply(samples.get(i));
            if (!Double.isNaN(here)) {
                return here;
            }
        }
        return otherwise;
    }

    /** Moves labels apart, downwards in order of height, until none is nearer than a line to the next. */
    private static double[] spread(double[] ys) {
        Integer[] order = new Integer[ys.length];
        for (int i = 0; i < ys.length; i++) {
            order[i] = i;
        }
        java.util.Arrays.sort(order, java.util.Comparator.comparingDouble(i -> ys[i]));
        double[] moved = ys.clone();
        for (int i = 1; i < order.length; i++) {
            moved[order[i]] = Math.max(moved[order[i]], moved[order[i - 1]] + 10);
        }
        return moved;
    }

    private String describe() {
        double least = samples.stream()
                .filter(s -> s.leastNearestMetres().isPresent())
                .mapToDouble(s -> s.leastNearestMetres().getAsDouble())
                .min()
                .orElse(Double.NaN);
        double most = samples.stream()
                .filter(s -> s.leastNearestMetres().isPresent())
                .mapToDouble(s -> s.leastNearestMetres().getAsDouble())
                .max()
                .orElse(Double.NaN);
        long crowded = samples.stream().filter(this::isCrowded).count();
        String range = Double.isNaN(least)
                ? "no two attackers were seen together"
                : "the least distance between team-mates runs from " + FigureText.decimal(least, 1) + " to "
                        + FigureText.decimal(most, 1) + " m";
        return "Spacing over time, " + FigureText.time(from) + " to " + FigureText.time(to) + ": " + range + "; below "
                + FigureText.decimal(crowdedMetres, 1) + " m outside an action for "
                + FigureText.decimal(crowded * 0.04, 1) + " s.";
    }
}
