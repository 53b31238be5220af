package floorgauge.court.calibration;

import floorgauge.court.lines.EvidenceMap;
import floorgauge.court.lines.LineSegment;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Ways in which a court could lie in the picture: for each pair of vanishing points, two lines of each direction taken for
 * lines of the court, and the whole court scored against the paint.
 */
final class CourtHypotheses {

    private static final int MOST_PER_AXIS = 110;

    /** The two scales of a grid may differ by this factor where the vanishing points tell the focal length. */
    private static final double SCALE_RATIO = 1.25;

    /** Every hypothesis is scored by one point in three; so many of the best are scored by all. */
    private static final int ROUGH_STEP = 3;

    private static final int SCORED_FULLY = 400;

    private static final double LOWEST_CAMERA_METRES = 0.7;
    private static final double HIGHEST_CAMERA_METRES = 40;

    /** From the centre of the court, along the floor: no gym lets a camera farther back. */
    private static final double FARTHEST_CAMERA_METRES = 70;

    /** A court and how well it explains the picture. */
    record Scored(RuleSet rules, Homography floorToPicture, double score) {}

    private final RuleSet rules;
    private final CourtScore score;
    private final Lens lens;
    private final int width;
    private final int height;
    private final double[] alongPositions;
    private final double[] acrossPositions;

    CourtHypotheses(RuleSet rules, EvidenceMap evidence, Lens lens) {
        this.rules = rules;
        this.score = new CourtScore(CourtSamples.of(rules, 1.2), evidence);
        this.lens = lens;
        this.width = evidence.width();
        this.height = evidence.height();
        this.alongPositions = positions(rules, false);
        this.acrossPositions = positions(rules, true);
    }

    /** Positions of the straight lines that run along x (their y), or of those that run along y (their x). */
    private static double[] positions(RuleSet rules, boolean runAlongX) {
        return rules.paintedLines().stream()
                .filter(PaintedLine.Straight.class::isInstance)
                .map(PaintedLine.Straight.class::cast)
                .filter(s -> (s.from().yMetres() == s.to().yMetres()) == runAlongX)
                .mapToDouble(s -> runAlongX ? s.from().yMetres() : s.from().xMetres())
                .distinct()
                .sorted()
                .toArray();
    }

    /** The best hypotheses of one pair of vanishing points, in both of its orders, best first. */
    List<Scored> of(VanishingPair pair, List<LineSegment> segments, int most) {
        List<Scored> found = new ArrayList<>();
        addOrdered(pair, segments, most, found);
        addOrdered(pair.exchanged(), segments, most, found);
        found.sort(Comparator.comparingDouble((Scored s) -> -s.score));
        return found.subList(0, Math.min(most, found.size()));
    }

    private void addOrdered(VanishingPair pair, List<LineSegment> segments, int most, List<Scored> found) {
        FloorGrid grid = new FloorGrid(pair, width, height);
        Homography toPicture = grid.pixelsToGrid().inverse();
        // From above a turn from x to y goes against the clock, in the picture with it: the product of signs is fixed.
        int sign = grid.pixelsToGrid().determinant() > 0 ? -1 : 1;
        List<AxisHypothesis> along = AxisHypothesis.of(grid.lines(segments, false), alongPositions, 1, MOST_PER_AXIS);
        List<AxisHypothesis> across =
                AxisHypothesis.of(grid.lines(segments, true), acrossPositions, sign, MOST_PER_AXIS);
        double ratio = pair.tellsFocal() ? scaleRatio(toPicture, pair) : Double.NaN;
        List<Scored> own = along.parallelStream()
                .flatMap(x -> across.stream().flatMap(y -> scored(x, y, ratio, toPicture).stream()))
                .toList();
        found.addAll(best(own, most));
    }

    /** The court of two axes where it explains some of the picture; empty where its floor would be no plane of squares. */
    private Optional<Scored> scored(AxisHypothesis x, AxisHypothesis y, double ratio, Homography gridToPicture) {
        double off = Math.abs(x.scale() / y.scale()) / ratio;
        if (off > SCALE_RATIO || off < 1 / SCALE_RATIO) {
            return Optional.empty();
        }
        Homography metric = Homography.of(x.scale(), 0, x.offset(), 0, y.scale(), y.offset(), 0, 0, 1);
        Homography floorToPicture = facing(gridToPicture.after(metric.inverse()));
        double value = score.rough(floorToPicture, lens, ROUGH_STEP);
        return value > 0 ? Optional.of(new Scored(rules, floorToPicture, value)) : Optional.empty();
    }

    /** Those cameras that score best with all points, among those that score best with some. */
    private List<Scored> best(List<Scored> rough, int most) {
        List<Scored> likely = rough.stream()
                .sorted(Comparator.comparingDouble((Scored s) -> -s.score))
                .filter(s -> isCamera(new FloorProjection(s.floorToPicture, lens)))
                .limit(SCORED_FULLY)
                .toList();
        return likely.parallelStream()
                .map(s -> new Scored(rules, s.floorToPicture, score.of(s.floorToPicture, lens)))
                .filter(s -> s.score > 0)
                .sorted(Comparator.comparingDouble((Scored s) -> -s.score))
                .limit(most)
                .toList();
    }

    /** With positive weight at the floor in the middle of the picture's lower edge. */
    private Homography facing(Homography floorToPicture) {
        Homography back = floorToPicture.inverse();
        double x = back.mapX((width - 1) / 2.0, height - 1.0);
        double y = back.mapY((width - 1) / 2.0, height - 1.0);
        return floorToPicture.weight(x, y) < 0 ? floorToPicture.scaled(-1) : floorToPicture;
    }

    /** Scale along over scale across that makes the grid square, from the focal length of the pair. */
    private double scaleRatio(Homography gridToPicture, VanishingPair pair) {
        double focal = pair.focal() * Math.hypot(width, height) / 2;
        double cx = (width - 1) / 2.0;
        double cy = (height - 1) / 2.0;
        double[] lengths = new double[2];
        for (int column = 0; column < 2; column++) {
            double w = gridToPicture.at(2, column);
            double u = (gridToPicture.at(0, column) - cx * w) / focal;
            double v = (gridToPicture.at(1, column) - cy * w) / focal;
            lengths[column] = Math.sqrt(u * u + v * v + w * w);
        }
        return lengths[0] / lengths[1];
    }

    /** Whether a camera that films a game may see the floor so. */
    static boolean isCamera(FloorProjection projection) {
        return PinholeCamera.of(projection)
                .map(PinholeCamera::position)
                .filter(p -> p.z() > LOWEST_CAMERA_METRES && p.z() < HIGHEST_CAMERA_METRES)
                .filter(p -> Math.hypot(p.x(), p.y()) < FARTHEST_CAMERA_METRES)
                .isPresent();
    }
}
