package floorgauge.court.calibration;

import floorgauge.court.lines.EvidenceMap;
import java.util.OptionalDouble;

/**
 * How well the whole painted court explains the picture: the log likelihood ratio, over the points of the court's lines
 * that are in sight, of "the court is painted here" against "paint is here by chance". A point that meets paint of its
 * direction speaks for the court by how rare such paint is thereabouts; a point that meets none speaks against it.
 *
 * <p>The null model is that of Desolneux, Moisan and Morel, Meaningful alignments (IJCV 40, 2000).
 */
final class CourtScore {

    /** Share of a painted court's lines that is seen as paint; the rest is worn, hidden or lost in glare (own figure). */
    private static final double SEEN = 0.8;

    /** Points nearer to each other in the picture than this tell the same thing. */
    private static final double INDEPENDENT_PIXELS = 8;

    /** Paint in one cell of this size is explained once, however many lines a far-fetched court piles up there. */
    private static final int CELL_PIXELS = 6;

    private final CourtSamples samples;
    private final EvidenceMap evidence;
    private final ThreadLocal<Explained> explained;

    CourtScore(CourtSamples samples, EvidenceMap evidence) {
        this.samples = samples;
        this.evidence = evidence;
        this.explained = ThreadLocal.withInitial(() -> new Explained(evidence.width(), evidence.height()));
    }

    /** Which line explains the paint of each cell of the picture, for one court after another. */
    private static final class Explained {
        private final int columns;
        private final int[] inRound;
        private final int[] byLine;
        private int round;

        Explained(int width, int height) {
            columns = width / CELL_PIXELS + 1;
            inRound = new int[columns * (height / CELL_PIXELS + 1)];
            byLine = new int[inRound.length];
        }

        void nextCourt() {
            round++;
        }

        /** Whether another line of the same court already explains the paint here; if not, this one does from now on. */
        boolean byOther(double x, double y, int line) {
            int cell = (int) y / CELL_PIXELS * columns + (int) x / CELL_PIXELS;
            if (inRound[cell] != round) {
                inRound[cell] = round;
                byLine[cell] = line;
            }
            return byLine[cell] != line;
        }
    }

    /** In natural logarithms; 0 where nothing is in sight. */
    double of(Homography floorToPicture, Lens lens) {
        return of(floorToPicture, lens, 1);
    }

    /** The same from every nth point only, on the scale of all. */
    double rough(Homography floorToPicture, Lens lens, int every) {
        return every * of(floorToPicture, lens, every);
    }

    private double of(Homography floorToPicture, Lens lens, int every) {
        Explained cells = explained.get();
        cells.nextCourt();
        double sum = 0;
        double[] at = new double[5];
        for (int i = every / 2; i < samples.size(); i += every) {
            if (place(i, floorToPicture, lens, at) && !cells.byOther(at[0], at[1], samples.line[i])) {
                int bin = EvidenceMap.bin(at[2], at[3]);
                double chance = Math.max(0.02, Math.min(0.6, evidence.chance(at[0], at[1], bin)));
                double distance = evidence.distance(at[0], at[1], bin) / evidence.tolerance();
                double hit = Math.exp(-distance * distance / 2);
                double weight = Math.min(1, at[4] / INDEPENDENT_PIXELS);
                sum += weight * (hit * Math.log(SEEN / chance) + (1 - hit) * Math.log((1 - SEEN) / (1 - chance)));
            }
        }
        return sum;
    }

    /**
     * Where sample i appears.
     *
     * @param at filled with place, unit direction, and the piece's length in pixels
     * @return false where it is not in the picture
     */
    private boolean place(int i, Homography g, Lens lens, double[] at) {
        double x = samples.x[i];
        double y = samples.y[i];
        double w = g.weight(x, y);
        if (!(w > 0)) {
            return false;
        }
        double u = g.mapX(x, y);
        double v = g.mapY(x, y);
        double dx = ((g.at(0, 0) - u * g.at(2, 0)) * samples.directionX[i]
                        + (g.at(0, 1) - u * g.at(2, 1)) * samples.directionY[i])
                / w;
        double dy = ((g.at(1, 0) - v * g.at(2, 0)) * samples.directionX[i]
                        + (g.at(1, 1) - v * g.at(2, 1)) * samples.directionY[i])
                / w;
        if (lens.k() != 0 || lens.l() != 0) {
            double cx = u - lens.centreX();
            double cy = v - lens.centreY();
            OptionalDouble factor = lens.bending((cx * cx + cy * cy) / (lens.radiusPixels() * lens.radiusPixels()));
            if (factor.isEmpty()) {
                return false;
            }
            u = lens.centreX() + cx * factor.getAsDouble();
            v = lens.centreY() + cy * factor.getAsDouble();
        }
        if (!evidence.inside(u, v)) {
            return false;
        }
        double length = Math.sqrt(dx * dx + dy * dy);
        at[0] = u;
        at[1] = v;
        at[2] = dx / length;
        at[3] = dy / length;
        at[4] = length * samples.spacing[i];
        return length > 0;
    }
}
