package floorgauge.app.drawing;

import floorgauge.events.finding.Figure;

/** A figure as a point with its error on a short scale, the threshold as a tick across it. */
public final class Gauge {

    private static final double WIDTH = 120;
    private static final double HEIGHT = 14;
    private static final double SIDE = 4;

    private Gauge() {}

    /** Draws it; the scale starts at zero, or at the least value shown where that is below zero. */
    public static String of(Figure figure) {
        double error = figure.standardError().orElse(0);
        double threshold = figure.threshold().map(t -> t.value()).orElse(figure.value());
        double least = Math.min(0, Math.min(figure.value() - error, threshold));
        double most = Math.max(figure.value() + error, threshold) * 1.15;
        double span = most > least ? most - least : 1;
        Svg svg = new Svg(0, 0, WIDTH, HEIGHT, "gauge", describe(figure));
        double y = HEIGHT / 2;
        svg.line(SIDE, y, WIDTH - SIDE, y, "gauge-line");
        boolean beyond = FigureText.isBeyond(figure);
        double x = x(figure.value(), least, span);
        if (error > 0) {
            double from = x(figure.value() - error, least, span);
            svg.line(
                    Math.max(SIDE, from),
                    y,
                    x(figure.value() + error, least, span),
                    y,
                    beyond ? "gauge-error beyond" : "gauge-error");
        }
        figure.threshold().ifPresent(t -> {
            double at = x(t.value(), least, span);
            svg.line(at, 1, at, HEIGHT - 1, "gauge-threshold");
        });
        svg.circle(x, y, 2.6, beyond ? "gauge-value beyond" : "gauge-value");
        return svg.finish();
    }

    private static double x(double value, double least, double span) {
        return SIDE + (value - least) / span * (WIDTH - 2 * SIDE);
    }

    private static String describe(Figure figure) {
        String held = figure.threshold()
                .map(t -> ", held against " + FigureText.of(t, figure.unit())
                        + (FigureText.isBeyond(figure) ? ", beyond it" : ", within it"))
                .orElse("");
        return figure.name() + " " + FigureText.of(figure) + held;
    }
}
