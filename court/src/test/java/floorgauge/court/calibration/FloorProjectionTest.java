package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import org.junit.jupiter.api.Test;

class FloorProjectionTest {

    private static final PlanarScene BARREL = PlanarScene.halfCourtThroughBarrelLens();

    @Test
    void degenerateHomographiesAreRefused() {
        assertThatThrownBy(() -> Homography.of(1, 2, 3)).hasMessageContaining("nine entries");
        assertThatThrownBy(() -> Homography.of(0, 0, 0, 0, 0, 0, 0, 0, 0)).hasMessageContaining("invertible");
        assertThatThrownBy(() -> Homography.of(1, 2, 3, 2, 4, 6, 0, 0, 1)).hasMessageContaining("invertible");
        assertThatThrownBy(() -> Homography.of(1, 0, 0, 0, Double.NaN, 0, 0, 0, 1))
                .hasMessageContaining("finite");
    }

    @Test
    void behindTheCameraIsNowhereInTheFilm() {
        assertThat(BARREL.projection().toFilm(6, -40)).isEmpty();
    }

    @Test
    void theLensBendsAsTheModelSays() {
        for (double x = 0; x <= 14; x += 2) {
            for (double y = -5; y <= 7.5; y += 2.5) {
                double[] film = BARREL.film(x, y, 0);
                PixelPoint pixel = BARREL.projection().toFilm(x, y).orElseThrow();
                assertThat(pixel.x()).isCloseTo(film[0], within(1e-6));
                assertThat(pixel.y()).isCloseTo(film[1], within(1e-6));
                FloorPoint back = BARREL.projection().toFloor(pixel).orElseThrow();
                assertThat(back.xMetres()).isCloseTo(x, within(1e-7));
                assertThat(back.yMetres()).isCloseTo(y, within(1e-7));
            }
        }
    }

    @Test
    void aLensOfTwoTermsBendsBackWhatItStraightens() {
        Lens lens = new Lens(640, 360, 734, -0.11, -0.03);
        for (double x = 0; x <= 1280; x += 160) {
            for (double y = 0; y <= 720; y += 120) {
                PixelPoint ideal = lens.straighten(new PixelPoint(x, y)).orElseThrow();
                PixelPoint back = lens.bend(ideal.x(), ideal.y()).orElseThrow();
                assertThat(back.x()).isCloseTo(x, within(1e-8));
                assertThat(back.y()).isCloseTo(y, within(1e-8));
            }
        }
        assertThatThrownBy(() -> new Lens(640, 360, 734, -0.7, -0.4)).hasMessageContaining("lens out of range");
    }

    @Test
    void derivativesAgreeWithDifferences() {
        derivativesAgree(BARREL.projection());
        derivativesAgree(new FloorProjection(
                BARREL.projection().floorToIdeal(), BARREL.projection().lens().withStrengths(-0.1, -0.02)));
    }

    private static void derivativesAgree(FloorProjection projection) {
        double[][] byFloor = new double[2][2];
        double[][] byParameters = new double[2][FloorProjection.PARAMETERS];
        assertThat(projection.derivatives(11, 3, byFloor, byParameters)).isTrue();
        double step = 1e-5;
        PixelPoint right = projection.toFilm(11 + step, 3).orElseThrow();
        PixelPoint left = projection.toFilm(11 - step, 3).orElseThrow();
        assertThat(byFloor[0][0]).isCloseTo((right.x() - left.x()) / (2 * step), within(1e-4));
        assertThat(byFloor[1][0]).isCloseTo((right.y() - left.y()) / (2 * step), within(1e-4));
        PixelPoint up = projection.toFilm(11, 3 + step).orElseThrow();
        PixelPoint down = projection.toFilm(11, 3 - step).orElseThrow();
        assertThat(byFloor[0][1]).isCloseTo((up.x() - down.x()) / (2 * step), within(1e-4));
        assertThat(byFloor[1][1]).isCloseTo((up.y() - down.y()) / (2 * step), within(1e-4));
        for (int parameter = 0; parameter < FloorProjection.PARAMETERS; parameter++) {
            double size = parameter < 9
                    ? Math.max(1e-3, Math.abs(projection.floorToIdeal().rowMajor()[parameter]))
                    : 1;
            double h = 1e-6 * size;
            PixelPoint more = moved(projection, parameter, h).toFilm(11, 3).orElseThrow();
            PixelPoint less = moved(projection, parameter, -h).toFilm(11, 3).orElseThrow();
            double tolerance = 1e-4 * Math.max(1, Math.abs(byParameters[0][parameter]));
            assertThat(byParameters[0][parameter])
                    .as("x by parameter %d", parameter)
                    .isCloseTo((more.x() - less.x()) / (2 * h), within(tolerance));
            tolerance = 1e-4 * Math.max(1, Math.abs(byParameters[1][parameter]));
            assertThat(byParameters[1][parameter])
                    .as("y by parameter %d", parameter)
                    .isCloseTo((more.y() - less.y()) / (2 * h), within(tolerance));
        }
    }

    private static FloorProjection moved(FloorProjection projection, int parameter, double by) {
        if (parameter >= 9) {
            Lens lens = projection.lens();
            return new FloorProjection(
                    projection.floorToIdeal(),
                    lens.withStrengths(lens.k() + (parameter == 9 ? by : 0), lens.l() + (parameter == 10 ? by : 0)));
        }
        double[] entries = projection.floorToIdeal().rowMajor();
        entries[parameter] += by;
        return new FloorProjection(Homography.of(entries), projection.lens());
    }

    @Test
    void scalingThePictureKeepsTheFloor() {
        FloorProjection half = BARREL.projection().forPictureScaledBy(0.5);
        PixelPoint full = BARREL.projection().toFilm(9, 2).orElseThrow();
        PixelPoint small = half.toFilm(9, 2).orElseThrow();
        // A pixel's centre (0, 0) covers -0.5 to 0.5: edges scale, not centres.
        assertThat(small.x()).isCloseTo((full.x() + 0.5) / 2 - 0.5, within(1e-9));
        assertThat(small.y()).isCloseTo((full.y() + 0.5) / 2 - 0.5, within(1e-9));
    }
}
