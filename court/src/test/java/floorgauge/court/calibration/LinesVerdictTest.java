package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.lines.PaintPlace;
import floorgauge.court.lines.PaintSearch;
import floorgauge.court.rules.RuleSet;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What is called a court, where paint lies wherever it is looked for. */
class LinesVerdictTest {

    private static final int WIDTH = 1280;
    private static final int HEIGHT = 720;

    /**
     * Paint at every place.
     *
     * @param oneColour share of it that has one colour
     */
    private record PaintEverywhere(double oneColour) implements PaintSearch {

        @Override
        public OptionalDouble across(
                double x, double y, double normalX, double normalY, double widthPixels, double reachPixels) {
            return OptionalDouble.of(0);
        }

        @Override
        public double weightOfOneColour(List<PaintPlace> places) {
            return oneColour * places.stream().mapToDouble(PaintPlace::weight).sum();
        }
    }

    private static LinesFit verdict(FloorProjection court, double oneColour) {
        return verdict(court, oneColour, 1);
    }

    private static LinesFit verdict(FloorProjection court, double oneColour, double explained) {
        CourtSamples samples = CourtSamples.of(RuleSet.fiba(), 0.25);
        return new LinesVerdict(RuleSet.fiba(), samples, new PaintEverywhere(oneColour), WIDTH, HEIGHT, WIDTH, HEIGHT)
                .of(court, new LinesVerdict.Scores(100, 0, 0, 0, explained));
    }

    @Test
    void aCourtAllOfWhosePaintIsThereIsGood() {
        LinesFit found = verdict(PlanarScene.halfCourt().projection(), 1);
        assertThat(found.calibration().status())
                .as(found.calibration().reason())
                .isEqualTo(CalibrationStatus.GOOD);
        assertThat(found.matchedShare()).isEqualTo(1);
        assertThat(found.lineShares()).hasSizeGreaterThanOrEqualTo(10);
    }

    @Test
    void aCourtLaidOverAFewRowsOfThePictureIsNone() {
        // 15 m of the court's width in five pixels: paint there speaks for one line, whichever it is.
        Homography flat = Homography.of(25, 0, 640, 0, 0.33, 60, 0, 0, 1);
        LinesFit found = verdict(new FloorProjection(flat, Lens.centred(WIDTH, HEIGHT, 0)), 1);
        assertThat(found.calibration().status())
                .as(found.calibration().reason())
                .isEqualTo(CalibrationStatus.NONE);
        assertThat(found.calibration().reason())
                .startsWith("No court could be placed: at best 2 lines along, 0 across and 0 arcs");
    }

    @Test
    void aCourtMadeUpOfSeveralSportsLinesIsNone() {
        LinesFit found = verdict(PlanarScene.halfCourt().projection(), 0.36);
        assertThat(found.calibration().status()).isEqualTo(CalibrationStatus.NONE);
        assertThat(found.calibration().reason()).endsWith("36 in 100 in one colour of paint.");
        assertThat(found.oneColourShare()).isCloseTo(0.36, within(1e-9));
    }

    @Test
    void aCourtIsGoodByItsOwnPaintOrByExplainingWhatIsThere() {
        FloorProjection court = PlanarScene.halfCourt().projection();
        assertThat(verdict(court, 0.6, 0.95).calibration().status()).isEqualTo(CalibrationStatus.GOOD);
        assertThat(verdict(court, 0.8, 0.5).calibration().status()).isEqualTo(CalibrationStatus.GOOD);
        LinesFit neither = verdict(court, 0.6, 0.5);
        assertThat(neither.calibration().status()).isEqualTo(CalibrationStatus.WEAK);
        assertThat(neither.calibration().reason())
                .endsWith("but its lines explain only 50 in 100 of the paint of their colour on that floor.");
    }

    @Test
    void aWornCourtIsOneOnlyWhereTheFloorHasNoOtherPaintOfItsColour() {
        FloorProjection court = PlanarScene.halfCourt().projection();
        assertThat(verdict(court, 0.45, 0.95).calibration().status()).isNotEqualTo(CalibrationStatus.NONE);
        assertThat(verdict(court, 0.45, 0.8).calibration().status()).isEqualTo(CalibrationStatus.NONE);
    }
}
