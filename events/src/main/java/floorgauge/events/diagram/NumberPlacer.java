package floorgauge.events.diagram;

import floorgauge.events.step.Step;
import java.util.ArrayList;
import java.util.List;

/** Puts each step's number beside its stroke, where it covers no mark, no other number, and as little of other strokes as can be. */
final class NumberPlacer {

    private static final double[] SHARES = {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9};
    private static final double[] OFFSETS = {2.0, -2.0, 0, 2.8, -2.8, 3.8, -3.8};
    private static final double EDGE = 0.3;
    private static final double HARD = 10;

    private final Page page;
    private final List<PlayerDot> dots;
    private final List<Stroke> strokes;
    private double conflicts;

    NumberPlacer(Page page, List<PlayerDot> dots, List<Stroke> strokes) {
        this.page = page;
        this.dots = dots;
        this.strokes = strokes;
    }

    /** What could not be kept clear: about 1 for a number that covers a mark. */
    double conflicts() {
        return conflicts;
    }

    /** Steps without a stroke get a number nowhere, and count as a conflict. */
    List<PlacedNumber> place(List<Step> steps, int firstNumber) {
        List<PlacedNumber> placed = new ArrayList<>();
        int number = firstNumber;
        for (Step step : steps) {
            if (!step.kind().numbered()) {
                continue;
            }
            int own = index(step);
            if (own < 0) {
                conflicts += 1;
            } else {
                placed.add(new PlacedNumber(number, best(strokes.get(own), placed)));
            }
            number++;
        }
        return placed;
    }

    private int index(Step step) {
        for (int i = 0; i < strokes.size(); i++) {
            if (strokes.get(i).step() == step) {
                return i;
            }
        }
        return -1;
    }

    private double[] best(Stroke stroke, List<PlacedNumber> placed) {
        double[] best = null;
        double least = Double.POSITIVE_INFINITY;
        double whole = Polyline.length(stroke.line());
        for (double share : SHARES) {
            double s = share * whole;
            double[] p = Polyline.at(stroke.line(), s);
            double[] u = Polyline.direction(stroke.line(), s, 2);
            for (double offset : OFFSETS) {
                double[] at = {p[0] - u[1] * offset, p[1] + u[0] * offset};
                double cost = cost(at, stroke, placed)
                        + 0.3 * Math.abs(share - 0.5)
                        + 0.08 * Math.abs(offset)
                        + (offset == 0 ? 0.35 : 0);
                if (cost < least) {
                    least = cost;
                    best = at;
                }
            }
        }
        conflicts += least >= HARD ? 1 : Math.max(0, least - 1) * 0.3;
        return best;
    }

    private double cost(double[] at, Stroke own, List<PlacedNumber> placed) {
        double r = PlacedNumber.RADIUS;
        double cost = 0;
        for (PlayerDot dot : dots) {
            double room = (dot.attacking() ? dot.radius() : PlayerDot.CROSS_HALF * 1.3) + r + 0.2;
            cost += Polyline.distance(at, dot.at()) < room ? HARD : 0;
        }
        for (PlacedNumber number : placed) {
            double d = Polyline.distance(at, number.at());
            cost += d < 2 * r + 0.3 ? HARD : d < 2 * r + 1.5 ? 0.3 : 0;
        }
        for (Stroke stroke : strokes) {
            double d = Polyline.distance(at, stroke.line());
            if (stroke == own) {
                cost += Polyline.distance(at, stroke.tip()) < r + 0.9 ? 2 : d < r * 0.8 ? 0.3 : 0;
            } else {
                cost += d < r + 0.3 ? 1.4 : d < r + 0.9 ? 0.4 : 0;
                cost += Polyline.distance(at, stroke.tip()) < r + 1.3 ? 1.5 : 0;
            }
        }
        boolean outside = at[0] < r + EDGE
                || at[1] < r + EDGE
                || at[0] > Page.WIDTH - r - EDGE
                || at[1] > page.height() - r - EDGE;
        return cost + (outside ? HARD : 0);
    }
}
