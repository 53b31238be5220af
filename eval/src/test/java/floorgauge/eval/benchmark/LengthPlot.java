package floorgauge.eval.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** Time and memory against the length of a practice, as SVG; dashed, the straight line from nothing to the longest. */
final class LengthPlot {

    private static final int WIDTH = 250;
    private static final int HEIGHT = 180;
    private static final int LEFT = 48;
    private static final int TOP = 34;
    private static final int PANEL = WIDTH + 80;
    private static final int TICKS = 4;

    /**
     * One practice.
     *
     * @param hours its length
     * @param seconds processor time that it took
     * @param megabytes heap in use after it
     */
    record Run(double hours, double seconds, double megabytes) {}

    private final List<Run> runs;
    private final StringBuilder body = new StringBuilder();

    LengthPlot(List<Run> runs) {
        this.runs = new ArrayList<>(runs);
    }

    /** The whole picture; two panels. */
    String svg() {
        panel(LEFT, "processor time, s", Run::seconds, true);
        panel(LEFT + PANEL, "heap in use afterwards, MB", Run::megabytes, false);
        int width = 2 * PANEL + 20;
        int height = TOP + HEIGHT + 52;
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

    private void panel(int x0, String title, ToDoubleFunction<Run> value, boolean straight) {
        double hours = runs.stream().mapToDouble(Run::hours).max().orElse(1);
        double most = roundUp(runs.stream().mapToDouble(value).max().orElse(1));
        text(x0, TOP - 14, "start", title);
        body.append(String.format(
                Locale.ROOT,
                "<rect x='%d' y='%d' width='%d' height='%d' fill='none' stroke='#222' stroke-width='0.6'/>%n",
                x0,
                TOP,
                WIDTH,
                HEIGHT));
        for (int k = 0; k <= TICKS; k++) {
            double share = (double) k / TICKS;
            text((int) (x0 + share * WIDTH), TOP + HEIGHT + 16, "middle", figure(share * hours));
            text(x0 - 6, (int) (TOP + HEIGHT * (1 - share) + 4), "end", figure(share * most));
        }
        text(x0 + WIDTH / 2, TOP + HEIGHT + 36, "middle", "length of the practice, hours");
        StringBuilder line = new StringBuilder();
        for (Run run : runs) {
            double x = x0 + run.hours() / hours * WIDTH;
            double y = TOP + HEIGHT * (1 - value.applyAsDouble(run) / most);
            line.append(String.format(Locale.ROOT, "%.1f,%.1f ", x, y));
            body.append(String.format(Locale.ROOT, "<circle cx='%.1f' cy='%.1f' r='2.5'/>%n", x, y));
        }
        polyline(line.toString().trim(), "");
        if (straight) {
            Run last = runs.get(runs.size() - 1);
            polyline(
                    String.format(
                            Locale.ROOT,
                            "%d,%d %d,%.1f",
                            x0,
                            TOP + HEIGHT,
                            x0 + WIDTH,
                            TOP + HEIGHT * (1 - value.applyAsDouble(last) / most)),
                    " stroke-dasharray='5 3'");
        }
    }

    /** The least of 1, 2, 4 and 8 times a power of ten that is not below a value: a scale whose quarters read well. */
    private static double roundUp(double value) {
        double unit = Math.pow(10, Math.floor(Math.log10(value)));
        for (int times : new int[] {1, 2, 4, 8}) {
            if (times * unit >= value) {
                return times * unit;
            }
        }
        return 10 * unit;
    }

    private static String figure(double value) {
        return String.format(Locale.ROOT, value == Math.rint(value) ? "%.0f" : "%.1f", value);
    }

    private void polyline(String points, String dashes) {
        body.append(String.format(
                Locale.ROOT,
                "<polyline points='%s' fill='none' stroke='#222' stroke-width='1.2'%s/>%n",
                points,
                dashes));
    }

    private void text(int x, int y, String anchor, String words) {
        body.append(
                String.format(Locale.ROOT, "<text x='%d' y='%d' text-anchor='%s'>%s</text>%n", x, y, anchor, words));
    }
}
