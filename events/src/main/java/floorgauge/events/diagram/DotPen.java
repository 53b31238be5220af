package floorgauge.events.diagram;

import java.util.ArrayList;
import java.util.List;

/** Draws players' marks, and puts a defender's number where it is clearest of everything else. */
final class DotPen {

    private static final double RING_PEN = 0.36;
    private static final double CROSS_PEN = 0.4;

    private final SvgText svg;
    private final Page page;
    private final List<PlayerDot> dots;
    private final List<List<double[]>> lines;
    private final List<double[]> numbers;

    DotPen(SvgText svg, Page page, List<PlayerDot> dots, List<List<double[]>> lines) {
        this(svg, page, dots, lines, List.of());
    }

    /** @param numbers middles of the steps' numbers */
    DotPen(SvgText svg, Page page, List<PlayerDot> dots, List<List<double[]>> lines, List<double[]> numbers) {
        this.svg = svg;
        this.page = page;
        this.dots = dots;
        this.lines = lines;
        this.numbers = numbers;
    }

    void draw(PlayerDot dot) {
        if (dot.attacking()) {
            svg.ring(dot.at(), PlayerDot.RING_RADIUS, RING_PEN);
            svg.text(dot.at(), dot.labelSize(), dot.label(), true, false);
            return;
        }
        double h = PlayerDot.CROSS_HALF;
        double[] c = dot.at();
        String d = "M" + SvgText.pair(new double[] {c[0] - h, c[1] - h}) + "L"
                + SvgText.pair(new double[] {c[0] + h, c[1] + h}) + "M"
                + SvgText.pair(new double[] {c[0] - h, c[1] + h}) + "L"
                + SvgText.pair(new double[] {c[0] + h, c[1] - h});
        svg.halo(d, CROSS_PEN + 0.7);
        svg.path(d, CROSS_PEN, "", "");
        svg.text(labelPlace(dot), dot.labelSize(), dot.label(), false, false);
    }

    private double[] labelPlace(PlayerDot dot) {
        double aside = PlayerDot.CROSS_HALF + dot.labelHalfWidth() + 0.35;
        double above = PlayerDot.CROSS_HALF + dot.labelSize() * SvgText.CAP_HEIGHT / 2 + 0.3;
        List<double[]> places = new ArrayList<>();
        for (double[] shift : new double[][] {
            {aside, 0},
            {-aside, 0},
            {0, above},
            {0, -above},
            {aside, above / 2},
            {aside, -above / 2},
            {-aside, above / 2},
            {-aside, -above / 2}
        }) {
            places.add(new double[] {dot.at()[0] + shift[0], dot.at()[1] + shift[1]});
        }
        double[] best = places.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < places.size(); k++) {
            double cost = clutter(places.get(k), dot) + 0.05 * k;
            if (cost < least) {
                least = cost;
                best = places.get(k);
            }
        }
        return best;
    }

    private double clutter(double[] at, PlayerDot own) {
        double half = Math.max(own.labelHalfWidth(), 0.85);
        double cost = 0;
        for (PlayerDot dot : dots) {
            double room = (dot.attacking() ? dot.radius() : PlayerDot.CROSS_HALF * 1.2) + half;
            cost += dot != own && Polyline.distance(at, dot.at()) < room ? 5 : 0;
        }
        for (List<double[]> line : lines) {
            cost += Polyline.distance(at, line) < half + 0.2 ? 1.5 : 0;
        }
        for (double[] number : numbers) {
            cost += Polyline.distance(at, number) < PlacedNumber.RADIUS + half ? 4 : 0;
        }
        boolean outside = at[0] < half || at[1] < half || at[0] > Page.WIDTH - half || at[1] > page.height() - half;
        return cost + (outside ? 5 : 0);
    }
}
