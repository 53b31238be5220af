package floorgauge.court.lines;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.calibration.OpenCv;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

class RidgeFinderTest {

    private static final int SIZE = 120;

    @BeforeAll
    static void load() {
        OpenCv.load();
    }

    /**
     * A level stripe, seen through a lens's blur, on floor whose shade changes downwards.
     *
     * @param middle row of the stripe's middle
     * @param strength of the stripe's peak, of 255
     * @param slope of the floor's shade, of 255 a pixel
     */
    private static Mat stripe(double middle, double strength, double slope) {
        Mat picture = new Mat(SIZE, SIZE, CvType.CV_8UC3);
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                double d = y - middle;
                // Spread by half a step from column to column, so that rounding to whole greys averages out.
                double grey = 110 + slope * (y - SIZE / 2.0) + strength * Math.exp(-d * d / 2) + (x % 8) / 8.0 - 0.5;
                double value = Math.max(0, Math.min(255, Math.rint(grey)));
                picture.put(y, x, value, value, value);
            }
        }
        return picture;
    }

    private static double meanRow(Mat picture) {
        List<RidgePoint> points = RidgeFinder.find(picture);
        picture.release();
        return points.stream()
                .filter(p -> Math.abs(p.normalY()) > 0.95 && p.x() > 15 && p.x() < SIZE - 15)
                .filter(p -> Math.abs(p.y() - SIZE / 2.0) < 3 && p.contrastL() > 0)
                .mapToDouble(RidgePoint::y)
                .average()
                .orElse(Double.NaN);
    }

    @Test
    void aBareFloorHasNoRidges() {
        Mat bare = stripe(60, 0, 0.3);
        assertThat(RidgeFinder.find(bare).stream()
                        .filter(p -> p.y() > 20 && p.y() < 100)
                        .count())
                .isZero();
        bare.release();
    }

    @Test
    void theMiddleIsFoundToAFractionOfAPixel() {
        for (double middle : new double[] {60, 60.25, 60.5, 60.8}) {
            assertThat(meanRow(stripe(middle, 40, 0))).isBetween(middle - 0.04, middle + 0.04);
        }
    }

    @Test
    void shadeAcrossAFaintStripeDoesNotMoveIt() {
        for (double slope : new double[] {-0.4, 0.4}) {
            assertThat(meanRow(stripe(60.25, 14, slope)))
                    .as("slope %.1f", slope)
                    .isBetween(60.15, 60.35);
        }
    }
}
