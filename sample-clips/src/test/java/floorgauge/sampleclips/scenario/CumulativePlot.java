package floorgauge.sampleclips.scenario;

import java.util.List;
import java.util.Locale;

/** Cumulative distributions of two samples a panel, as SVG: the library's line solid, the real one dashed. */
final class CumulativePlot {

    private static final int PANEL_WIDTH = 280;
    private static final int PLOT_WIDTH = 220;
    private static final int PLOT_HEIGHT = 200;
    private static final int LEFT = 46;
    private static final int TOP = 34;
    private static final int POINTS = 100;

    private final StringBuilder body = new StringBuilder();
    private int panels;

    /** A panel with the share of samples at most x, for x from 0 to a largest value. */
    void panel(String title, String unit, double most, double tick, List<Double> library, List<Double> real) {
        int x0 = LEFT + panels * PANEL_WIDTH;
        panels++;
        text(x0, TOP - 14, "start", title + ", " + unit);
        body.append(String.format(
                Locale.ROOT,
                "<rect x='%d' y='%d' width='%d' height='%d' fill='none' stroke='#222' stroke-width='0.6'/>%n",
                x0,
                TOP,
                PLOT_WIDTH,
                PLOT_HEIGHT));
        for (double v = 0; v <= most + 1e-9; v += tick) {
            int x = (int) Math.round(x0 + v / most * PLOT_WIDTH);
            line(x, TOP + PLOT_HEIGHT, x, TOP + PLOT_HEIGHT + 4);
            text(x, TOP + PLOT_HEIGHT + 17, "middle", String.format(Locale.ROOT, "%.0f", v));
        }
        for (int percent = 0; percent <= 100; percent += 25) {
            int y = TOP + PLOT_HEIGHT - percent * PLOT_HEIGHT / 100;
            line(x0 - 4, y, x0, y);
            text(x0 - 7, y + 4, "end", percent + " %");
        }
        curve(x0, most, library, "");
        curve(x0, most, real, " stroke-dasharray='5 3'");
    }

    private void line(int x1, int y1, int x2, int y2) {
        body.append(String.format(
                Locale.ROOT,
                "<line x1='%d' y1='%d' x2='%d' y2='%d' stroke='#222' stroke-width='0.6'/>%n",
                x1,
                y1,
                x2,
                y2));
    }

    private void text(int x, int y, String anchor, String words) {
        body.append(
                String.format(Locale.ROOT, "<text x='%d' y='%d' text-anchor='%s'>%s</text>%n", x, y, anchor, words));
    }

    private void curve(int x0, double most, List<Double> sorted, String dashes) {
        StringBuilder points = new StringBuilder();
        int at = 0;
        for (int i = 0; i <= POINTS; i++) {
            double value = most * i / POINTS;
            while (at < sorted.size() && sorted.get(at) <= value) {
                at++;
            }
            points.append(String.format(
                    Locale.ROOT,
                    "%.1f,%.1f ",
                    x0 + (double) i / POINTS * PLOT_WIDTH,
                    TOP + PLOT_HEIGHT * (1 - (double) at / sorted.size())));
        }
        body.append(String.format(
                Locale.ROOT,
                "<polyline points='%s' fill='none' stroke='#222' stroke-width='1.5'%s/>%n",
                points.toString().trim(),
                dashes));
    }

    /** The whole picture. */
    String svg() {
        int width = LEFT + panels * PANEL_WIDTH;
        int height = TOP + PLOT_HEIGHT + 52;
        text(LEFT, height - 10, "start", "solid: the library's sound scenes; dashed: real three-on-three practice");
        return String.format(
                        Locale.ROOT,
                        "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 %d %d' font-family='sans-serif'"
                                + " font-size='11' fill='#222'>%n<rect width='%d' height='%d' fill='#fff'/>%n",
                        width,
                        height,
                        width,
                        height)
                + body
                + "</svg>\n";
    }
}
