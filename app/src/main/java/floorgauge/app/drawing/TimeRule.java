package floorgauge.app.drawing;

import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.Tick;
import java.util.stream.Collectors;

/** A ruler in seconds with named ticks; a delay is a dimension between two of them. */
public final class TimeRule {

    private static final double WIDTH = 640;
    private static final double SIDE = 26;
    private static final double ROW = 12;
    private static final double DELAY_ROW = 20;
    private static final double ROOM_SECONDS = 0.25;

    /** Words narrower than this many units a character never overlap in the page's type. */
    private static final double UNITS_PER_CHARACTER = 5.6;

    private final Finding finding;
    private final double from;
    private final double to;

    private TimeRule(Finding finding) {
        this.finding = finding;
        double first = finding.fromSeconds();
        double last = finding.toSeconds();
        for (Tick tick : finding.ticks()) {
            first = Math.min(first, tick.timeSeconds());
            last = Math.max(last, tick.timeSeconds());
        }
        from = first - ROOM_SECONDS;
        to = last + ROOM_SECONDS;
    }

    /** Draws the rule of a finding. */
    public static String of(Finding finding) {
        return new TimeRule(finding).draw();
    }

    private String draw() {
        int rows = wordRows();
        int delays = (int)
                finding.marks().stream().filter(m -> m instanceof Mark.Delay).count();
        double base = 6 + rows * ROW + delays * DELAY_ROW;
        Svg svg = new Svg(0, 0, WIDTH, base + 24, "time-rule", describe());
        svg.line(SIDE, base, WIDTH - SIDE, base, "rule-line");
        seconds(svg, base);
        frames(svg, base);
        ticks(svg, base, rows);
        delays(svg, base, rows);
        return svg.finish();
    }

    private double x(double timeSeconds) {
        return SIDE + (timeSeconds - from) / (to - from) * (WIDTH - 2 * SIDE);
    }

    /** A mark every tenth where there is room, a longer one with its figure every half second, or every few seconds. */
    private void seconds(Svg svg, double base) {
        double span = to - from;
        double numbered = span <= 6 ? 0.5 : span <= 15 ? 1 : span <= 40 ? 5 : 10;
        double fine = span <= 8 ? 0.1 : numbered / 5;
        for (long i = (long) Math.ceil(from / fine); i * fine <= to; i++) {
            double time = i * fine;
            boolean long0 = Math.abs(time / numbered - Math.rint(time / numbered)) < 1e-6;
            svg.line(x(time), base, x(time), base + (long0 ? 7 : 3), "rule-line");
            if (long0) {
                svg.text(x(time), base + 17, "middle", "scale", FigureText.time(time));
            }
        }
    }

    /** Small triangles below the rule show when the frames above were taken. */
    private void frames(Svg svg, double base) {
        finding.frames().forEach(frame -> {
            double x = x(frame.timeSeconds());
            svg.polygon(
                    java.util.List.of(
                            new double[] {x, base + 1}, new double[] {x - 3, base + 7}, new double[] {x + 3, base + 7}),
                    "frame-mark");
        });
    }

    private void ticks(Svg svg, double base, int rows) {
        double[] rowEnd = new double[rows];
        java.util.Arrays.fill(rowEnd, Double.NEGATIVE_INFINITY);
        for (Tick tick : finding.ticks()) {
            double x = x(tick.timeSeconds());
            double half = tick.words().length() * UNITS_PER_CHARACTER / 2;
            double centre = Math.max(half, Math.min(WIDTH - half, x));
            int row = firstFree(rowEnd, centre - half);
            rowEnd[row] = centre + half + UNITS_PER_CHARACTER;
            double y = 10 + row * ROW;
            svg.line(x, y + 3, x, base + 5, "tick");
            double error = tick.standardErrorSeconds() / (to - from) * (WIDTH - 2 * SIDE);
            if (error > 0) {
                svg.line(x - error, base, x + error, base, "tick-error");
            }
            svg.text(centre, y, "middle", "tick-words haloed", tick.words());
        }
    }

    private void delays(Svg svg, double base, int rows) {
        int index = 0;
        for (Mark mark : finding.marks()) {
            if (mark instanceof Mark.Delay delay) {
                double y = 6 + rows * ROW + index * DELAY_ROW + 14;
                new DimensionLine(
                                x(delay.fromSeconds()),
                                y,
                                x(delay.toSeconds()),
                                y,
                                0,
                                FigureText.of(delay.figure()),
                                FigureText.isBeyond(delay.figure()),
                                WIDTH)
                        .draw(svg);
                index++;
            }
        }
    }

    private int wordRows() {
        double[] rowEnd = new double[Math.max(1, finding.ticks().size())];
        java.util.Arrays.fill(rowEnd, Double.NEGATIVE_INFINITY);
        int used = 0;
        for (Tick tick : finding.ticks()) {
            double half = tick.words().length() * UNITS_PER_CHARACTER / 2;
            double centre = Math.max(half, Math.min(WIDTH - half, x(tick.timeSeconds())));
            int row = firstFree(rowEnd, centre - half);
            rowEnd[row] = centre + half + UNITS_PER_CHARACTER;
            used = Math.max(used, row + 1);
        }
        return used;
    }

    private static int firstFree(double[] rowEnd, double left) {
        for (int row = 0; row < rowEnd.length; row++) {
            if (rowEnd[row] <= left) {
                return row;
            }
        }
        return rowEnd.length - 1;
    }

    private String describe() {
        String ticks = finding.ticks().stream()
                .map(t -> t.words() + " at " + FigureText.time(t.timeSeconds()))
                .collect(Collectors.joining(", "));
        return "Time rule from " + FigureText.time(from) + " to " + FigureText.time(to)
                + (ticks.isEmpty() ? "" : ": " + ticks);
    }
}
