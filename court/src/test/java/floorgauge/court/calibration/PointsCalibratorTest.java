package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.CourtPoint;
import floorgauge.court.rules.CourtPoints;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PointsCalibratorTest {

    private static final PlanarScene SCENE = PlanarScene.halfCourt();

    /** Every named point in the picture, moved by noise of this many pixels. */
    private static List<MarkedPoint> marks(PlanarScene scene, double noisePixels, Random random) {
        List<MarkedPoint> marks = new ArrayList<>();
        for (CourtPoint point : CourtPoints.of(scene.rules)) {
            double[] film = scene.film(point.floor().xMetres(), point.floor().yMetres(), 0);
            if (scene.inPicture(film)) {
                double x = film[0] + noisePixels * random.nextGaussian();
                double y = film[1] + noisePixels * random.nextGaussian();
                if (scene.inPicture(new double[] {x, y})) {
                    marks.add(new MarkedPoint(point.name(), point.floor(), new PixelPoint(x, y)));
                }
            }
        }
        return marks;
    }

    /** The four corners of the lane at the right end. */
    private static List<MarkedPoint> lane() {
        return marks(SCENE, 0, new Random(1)).stream()
                .filter(m -> m.label().startsWith("right-elbow") || m.label().startsWith("right-end-lane"))
                .toList();
    }

    private static CourtCalibration calibrate(List<MarkedPoint> marks) {
        return CourtCalibrator.fromPoints(RuleSet.fiba(), marks, SCENE.width, SCENE.height);
    }

    @Test
    void tooFewPoints() {
        assertThatThrownBy(() -> calibrate(List.of()))
                .hasMessageContaining("at least four")
                .hasMessageContaining("0");
        assertThatThrownBy(() -> calibrate(marks(SCENE, 0, new Random(1)).subList(0, 3)))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("there are 3");
    }

    @Test
    void pointsInOneLine() {
        List<MarkedPoint> inLine = new ArrayList<>();
        for (double y : new double[] {-6, -2, 2, 6}) {
            double[] film = SCENE.film(9, y, 0);
            inLine.add(new MarkedPoint("y " + y, new FloorPoint(9, y), new PixelPoint(film[0], film[1])));
        }
        double[] film = SCENE.film(4, 0, 0);
        inLine.add(new MarkedPoint("off the line", new FloorPoint(4, 0), new PixelPoint(film[0], film[1])));
        assertThatThrownBy(() -> calibrate(inLine)).hasMessageContaining("one line on the floor");
    }

    @Test
    void pointsInOneLineOfThePicture() {
        List<MarkedPoint> marks = new ArrayList<>();
        int i = 0;
        for (MarkedPoint mark : lane()) {
            marks.add(new MarkedPoint(mark.label(), mark.floor(), new PixelPoint(100 + 90 * i, 200 + 30 * i)));
            i++;
        }
        assertThatThrownBy(() -> calibrate(marks)).hasMessageContaining("one line in the picture");
    }

    @Test
    void onePointTwice() {
        List<MarkedPoint> marks = marks(SCENE, 0, new Random(1));
        marks.add(marks.get(2));
        assertThatThrownBy(() -> calibrate(marks)).hasMessage(marks.get(2).label() + " is marked twice; keep one");
    }

    @Test
    void offThePicture() {
        List<MarkedPoint> marks = marks(SCENE, 0, new Random(1));
        MarkedPoint first = marks.get(0);
        marks.set(0, new MarkedPoint(first.label(), first.floor(), new PixelPoint(1300, 5)));
        assertThatThrownBy(() -> calibrate(marks)).hasMessageContaining("off the picture");
    }

    @Test
    void aMirroredSet() {
        List<MarkedPoint> mirrored = marks(SCENE, 0, new Random(1)).stream()
                .map(m -> new MarkedPoint(
                        m.label(),
                        new FloorPoint(m.floor().xMetres(), -m.floor().yMetres()),
                        m.pixel()))
                .toList();
        assertThatThrownBy(() -> calibrate(mirrored)).hasMessageContaining("mirrored");
    }

    @Test
    void shuffledNamesFitNoCamera() {
        List<MarkedPoint> marks = lane();
        List<PixelPoint> pixels =
                new ArrayList<>(marks.stream().map(MarkedPoint::pixel).toList());
        Collections.swap(pixels, 0, 2);
        List<MarkedPoint> shuffled = new ArrayList<>();
        for (int i = 0; i < marks.size(); i++) {
            shuffled.add(new MarkedPoint(marks.get(i).label(), marks.get(i).floor(), pixels.get(i)));
        }
        assertThatThrownBy(() -> calibrate(shuffled)).hasMessageContaining("no camera sees");
    }

    @Test
    void exactMarksGiveTheExactCourt() {
        CourtCalibration calibration = calibrate(marks(SCENE, 0, new Random(1)));
        assertThat(calibration.status()).isEqualTo(CalibrationStatus.GOOD);
        for (double x = 2; x <= 13; x += 2) {
            for (double y = -4; y <= 7; y += 2) {
                double[] film = SCENE.film(x, y, 0);
                FloorPoint found = calibration
                        .floorAt(new PixelPoint(film[0], film[1]), 0, 0)
                        .mean();
                assertThat(found.xMetres()).isCloseTo(x, within(1e-5));
                assertThat(found.yMetres()).isCloseTo(y, within(1e-5));
            }
        }
    }

    @Test
    void fourPointsAreWeakBecauseNothingChecksThem() {
        List<MarkedPoint> four = lane();
        assertThat(four).hasSize(4);
        CourtCalibration calibration = calibrate(four);
        assertThat(calibration.status()).isEqualTo(CalibrationStatus.WEAK);
        assertThat(calibration.reason()).contains("mark two more");
        assertThat(calibration.supports(new FloorPoint(11, 0))).isTrue();
        assertThat(calibration.supports(new FloorPoint(0, 0))).isFalse();
    }

    @Test
    void theMisplacedPointIsNamedAndLeftOut() {
        long seed = 77;
        List<MarkedPoint> marks = marks(SCENE, 0.7, new Random(seed));
        MarkedPoint good = marks.get(3);
        marks.set(
                3,
                new MarkedPoint(
                        good.label(),
                        good.floor(),
                        new PixelPoint(good.pixel().x() + 25, good.pixel().y() - 14)));
        PointsFit fit = CourtCalibrator.fitPoints(RuleSet.fiba(), marks, SCENE.width, SCENE.height);
        assertThat(fit.suspect()).as("seed %d", seed).contains(good.label());
        assertThat(fit.calibration().status()).isEqualTo(CalibrationStatus.WEAK);
        assertThat(fit.calibration().reason()).contains(good.label()).contains("left out");
        double[] film = SCENE.film(9, 1, 0);
        FloorPoint found = fit.calibration()
                .floorAt(new PixelPoint(film[0], film[1]), 0, 0)
                .mean();
        assertThat(found.distanceTo(new FloorPoint(9, 1))).as("seed %d", seed).isLessThan(0.05);
    }

    /**
     * The covariance is honest: over many draws of marks, the squared error over its covariance averages 2, and 95 in 100
     * lie below chi-square's 0.95 quantile with two degrees of freedom.
     */
    @Test
    void covarianceIsHonest() {
        long seed = 424242;
        Random random = new Random(seed);
        double sum = 0;
        int below = 0;
        int draws = 400;
        // The expected error of a mark, which the calibrator assumes: 0.001 of the picture's diagonal.
        double noise = 0.001 * Math.hypot(SCENE.width, SCENE.height);
        for (int i = 0; i < draws; i++) {
            CourtCalibration calibration = calibrate(marks(SCENE, noise, random));
            double x = 3 + 10 * random.nextDouble();
            double y = -4 + 11 * random.nextDouble();
            double[] film = SCENE.film(x, y, 0);
            PixelPoint seen =
                    new PixelPoint(film[0] + 0.8 * random.nextGaussian(), film[1] + 1.2 * random.nextGaussian());
            double squared = squared(calibration.floorAt(seen, 0.8, 1.2), x, y);
            sum += squared;
            below += squared < -2 * Math.log(0.05) ? 1 : 0;
        }
        assertThat(sum / draws).as("seed %d", seed).isBetween(1.6, 2.4);
        // Three standard errors of a share of 0.95 over the draws.
        assertThat((double) below / draws)
                .as("seed %d", seed)
                .isCloseTo(0.95, within(3 * Math.sqrt(0.95 * 0.05 / draws)));
    }

    static double squared(FloorEstimate estimate, double x, double y) {
        double dx = estimate.mean().xMetres() - x;
        double dy = estimate.mean().yMetres() - y;
        double xx = estimate.covariance().xx();
        double xy = estimate.covariance().xy();
        double yy = estimate.covariance().yy();
        return (dx * dx * yy - 2 * dx * dy * xy + dy * dy * xx) / (xx * yy - xy * xy);
    }
}
