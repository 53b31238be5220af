package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.lines.RidgePoint;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What of a floor's paint is a court's own. */
class OwnColourTest {

    private static final int WIDTH = 1280;
    private static final int HEIGHT = 720;
    private static final double REACH = 4.5;
    private static final double[] WHITE = {40, 0, -20};
    private static final double[] BLUE = {-20, 10, -50};

    private final FloorProjection court = PlanarScene.halfCourt().projection();
    private final CourtSamples samples = CourtSamples.of(RuleSet.fiba(), 0.25);

    private double explained(List<RidgePoint> paint) {
        return OwnColour.explainedShare(RuleSet.fiba(), samples, court, paint, WIDTH, HEIGHT, REACH);
    }

    /** Points in sight of a straight stripe on the floor, a centimetre apart. */
    private List<RidgePoint> stripe(double x1, double y1, double x2, double y2, double[] contrast) {
        List<RidgePoint> points = new ArrayList<>();
        int count = (int) (100 * Math.hypot(x2 - x1, y2 - y1));
        for (int i = 0; i < count; i++) {
            double t = (double) i / count;
            double ahead = (i + 1.0) / count;
            Optional<PixelPoint> here = court.toFilm(x1 + t * (x2 - x1), y1 + t * (y2 - y1));
            Optional<PixelPoint> next = court.toFilm(x1 + ahead * (x2 - x1), y1 + ahead * (y2 - y1));
            if (here.isPresent() && next.isPresent() && inside(here.get())) {
                double dx = next.get().x() - here.get().x();
                double dy = next.get().y() - here.get().y();
                double length = Math.hypot(dx, dy);
                points.add(new RidgePoint(
                        here.get().x(),
                        here.get().y(),
                        -dy / length,
                        dx / length,
                        10,
                        contrast[0],
                        contrast[1],
                        contrast[2]));
            }
        }
        return points;
    }

    private static boolean inside(PixelPoint p) {
        return p.x() >= 0 && p.y() >= 0 && p.x() <= WIDTH - 1 && p.y() <= HEIGHT - 1;
    }

    /** The centre line and the lane of the half that is in sight. */
    private List<RidgePoint> ownLines() {
        double lane = RuleSet.fiba().laneWidthMetres() / 2 - RuleSet.fiba().lineWidthMetres() / 2;
        List<RidgePoint> own = new ArrayList<>(stripe(0, -7, 0, 7, WHITE));
        own.addAll(stripe(8.5, lane, 13.9, lane, WHITE));
        own.addAll(stripe(8.5, -lane, 13.9, -lane, WHITE));
        assertThat(own).hasSizeGreaterThan(1000);
        return own;
    }

    @Test
    void noPaintExplainsNothing() {
        assertThat(explained(List.of())).isZero();
        assertThat(explained(stripe(4, -6, 4, 6, WHITE))).isZero();
    }

    @Test
    void aCourtsOwnLinesAreAllExplained() {
        assertThat(explained(ownLines())).isCloseTo(1, within(1e-9));
    }

    @Test
    void othersLinesOfTheColourAreNotAndOfAnotherDoNotCount() {
        List<RidgePoint> own = ownLines();
        List<RidgePoint> across = stripe(4, -6, 4, 6, WHITE);
        assertThat(across).isNotEmpty();
        List<RidgePoint> white = new ArrayList<>(own);
        white.addAll(across);
        assertThat(explained(white)).isCloseTo((double) own.size() / white.size(), within(0.01));

        List<RidgePoint> blue = new ArrayList<>(own);
        blue.addAll(stripe(4, -6, 4, 6, BLUE));
        assertThat(explained(blue)).isCloseTo(1, within(1e-9));
    }

    @Test
    void linesBesideTheCourtAreNotItsBusiness() {
        List<RidgePoint> with = new ArrayList<>(ownLines());
        List<RidgePoint> beside = stripe(2, 8.5, 12, 8.5, WHITE);
        assertThat(beside).isNotEmpty();
        with.addAll(beside);
        assertThat(explained(with)).isCloseTo(1, within(1e-9));
    }
}
