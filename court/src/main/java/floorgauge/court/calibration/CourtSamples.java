package floorgauge.court.calibration;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;

/** Points along all painted lines of a court, each with its line's direction, as plain arrays for speed. */
final class CourtSamples {

    final double[] x;
    final double[] y;
    final double[] directionX;
    final double[] directionY;
    final double[] spacing;
    final int[] line;
    final List<PaintedLine> lines;

    private CourtSamples(List<PaintedLine> lines, List<double[]> rows) {
        int n = rows.size();
        this.lines = lines;
        this.x = new double[n];
        this.y = new double[n];
        this.directionX = new double[n];
        this.directionY = new double[n];
        this.spacing = new double[n];
        this.line = new int[n];
        for (int i = 0; i < n; i++) {
            double[] row = rows.get(i);
            x[i] = row[0];
            y[i] = row[1];
            directionX[i] = row[2];
            directionY[i] = row[3];
            spacing[i] = row[4];
            line[i] = (int) row[5];
        }
    }

    /** Middles of pieces of about this length. */
    static CourtSamples of(RuleSet rules, double pieceMetres) {
        List<PaintedLine> lines = rules.paintedLines();
        List<double[]> rows = new ArrayList<>();
        for (int l = 0; l < lines.size(); l++) {
            List<FloorPoint> ends = CourtOverlay.samples(lines.get(l), pieceMetres);
            for (int i = 1; i < ends.size(); i++) {
                FloorPoint a = ends.get(i - 1);
                FloorPoint b = ends.get(i);
                double length = a.distanceTo(b);
                double[] middle = middle(lines.get(l), a, b);
                rows.add(new double[] {
                    middle[0],
                    middle[1],
                    (b.xMetres() - a.xMetres()) / length,
                    (b.yMetres() - a.yMetres()) / length,
                    length,
                    l
                });
            }
        }
        return new CourtSamples(lines, rows);
    }

    /** The middle of the chord, or for an arc the point of the arc above it. */
    private static double[] middle(PaintedLine line, FloorPoint a, FloorPoint b) {
        double x = (a.xMetres() + b.xMetres()) / 2;
        double y = (a.yMetres() + b.yMetres()) / 2;
        if (line instanceof PaintedLine.Arc arc) {
            double dx = x - arc.centre().xMetres();
            double dy = y - arc.centre().yMetres();
            double r = Math.hypot(dx, dy);
            return new double[] {
                arc.centre().xMetres() + dx * arc.radiusMetres() / r,
                arc.centre().yMetres() + dy * arc.radiusMetres() / r
            };
        }
        return new double[] {x, y};
    }

    int size() {
        return x.length;
    }
}
