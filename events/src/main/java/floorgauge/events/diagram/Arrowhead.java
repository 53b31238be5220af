package floorgauge.events.diagram;

import java.util.List;

/** A slim, notched arrowhead at the end of a line. */
final class Arrowhead {

    private static final double NOTCH = 0.75;

    private Arrowhead() {}

    static void draw(SvgText svg, List<double[]> line, double length, double halfWidth) {
        double whole = Polyline.length(line);
        double[] tip = Polyline.at(line, whole);
        double[] u = Polyline.unit(Polyline.at(line, whole - length), tip);
        svg.solid(List.of(
                tip,
                back(tip, u, length, halfWidth),
                back(tip, u, length * NOTCH, 0),
                back(tip, u, length, -halfWidth)));
    }

    /** A point behind a tip and to its side. */
    static double[] back(double[] tip, double[] u, double behind, double aside) {
        return new double[] {tip[0] - u[0] * behind - u[1] * aside, tip[1] - u[1] * behind + u[0] * aside};
    }
}
