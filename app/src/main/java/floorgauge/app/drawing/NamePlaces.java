package floorgauge.app.drawing;

import java.util.ArrayList;
import java.util.List;

/** Finds room for names over a frame: a name that would cover another moves up, a line at a time. */
final class NamePlaces {

    private static final double UNITS_PER_CHARACTER = 6.3;
    private static final double LINE = 11.5;
    private static final int MOST_LINES = 12;

    private final double width;
    private final List<double[]> taken = new ArrayList<>();

    /** @param width of the drawing, in which names stay */
    NamePlaces(double width) {
        this.width = width;
    }

    /** Where the middle of a name's base line stands: as near above (x, y) as there is room. */
    double[] place(double x, double y, int characters) {
        double half = characters * UNITS_PER_CHARACTER / 2;
        double free = Math.max(half, Math.min(width - half, x));
        double line = Math.max(LINE, y);
        for (int i = 0; i < MOST_LINES && covers(free - half, free + half, line); i++) {
            line = line - LINE >= LINE ? line - LINE : line + (i + 1) * LINE;
        }
        taken.add(new double[] {free - half, free + half, line});
        return new double[] {free, line};
    }

    private boolean covers(double left, double right, double line) {
        return taken.stream().anyMatch(t -> left < t[1] && right > t[0] && Math.abs(line - t[2]) < LINE - 0.5);
    }
}
