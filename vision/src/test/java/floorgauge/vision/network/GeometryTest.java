package floorgauge.vision.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;

/** Letterbox, crop and suppression: where a patch of known place comes to lie, and that it is found back. */
class GeometryTest {

    @BeforeAll
    static void load() {
        OpenCv.load();
    }

    @Test
    void inputsAreMultiplesOfThirtyTwo() {
        Letterbox letterbox = new Letterbox(new Rect(0, 0, 640, 360), 1);
        assertThat(letterbox.inputWidth()).isEqualTo(640);
        assertThat(letterbox.inputHeight()).isEqualTo(384);
        Letterbox tiny = new Letterbox(new Rect(0, 0, 1, 1), 0.01);
        assertThat(tiny.inputWidth()).isEqualTo(64);
    }

    @Test
    void aPatchIsFoundBackThroughTheLetterbox() {
        Mat picture = new Mat(200, 300, CvType.CV_8UC3, Scalar.all(0));
        picture.submat(new Rect(120, 80, 40, 20)).setTo(Scalar.all(255));
        for (double scale : new double[] {0.5, 1, 1.7, 3}) {
            Letterbox letterbox = new Letterbox(new Rect(100, 60, 150, 110), scale);
            Mat input = new Mat(letterbox.inputHeight(), letterbox.inputWidth(), CvType.CV_8UC3);
            letterbox.fill(picture, input);
            Rect lit = litPart(input);
            ImageBox back = letterbox.toPicture(lit.x, lit.y, lit.x + lit.width, lit.y + lit.height);
            double tolerance = 0.75 / Math.min(1, scale);
            assertThat(back.left()).isCloseTo(119.5, within(tolerance));
            assertThat(back.top()).isCloseTo(79.5, within(tolerance));
            assertThat(back.width()).isCloseTo(40, within(2 * tolerance));
            assertThat(back.height()).isCloseTo(20, within(2 * tolerance));
            assertThat(input.get(letterbox.inputHeight() - 1, letterbox.inputWidth() - 1)[0])
                    .isIn(0.0, 114.0);
        }
    }

    private static Rect litPart(Mat input) {
        int left = Integer.MAX_VALUE;
        int top = Integer.MAX_VALUE;
        int right = 0;
        int bottom = 0;
        for (int y = 0; y < input.rows(); y++) {
            for (int x = 0; x < input.cols(); x++) {
                if (input.get(y, x)[0] > 127) {
                    left = Math.min(left, x);
                    top = Math.min(top, y);
                    right = Math.max(right, x + 1);
                    bottom = Math.max(bottom, y + 1);
                }
            }
        }
        return new Rect(left, top, right - left, bottom - top);
    }

    @Test
    void theCropIsASquareRoundTheBoxesMiddle() {
        PoseCrop crop = PoseCrop.around(new ImageBox(100, 50, 20, 80));
        assertThat(crop.side()).isEqualTo(100);
        assertThat(crop.toPicture(0.5, 0.5)).isEqualTo(new PixelPoint(110, 90));
        assertThat(crop.toPicture(0, 0)).isEqualTo(new PixelPoint(60, 40));
    }

    @Test
    void aCropAtFractionsOfAPixelPutsASpotWhereItSays() {
        Mat picture = new Mat(100, 100, CvType.CV_8UC3, Scalar.all(0));
        picture.put(60, 40, 255, 255, 255);
        PoseCrop crop = new PoseCrop(20.3, 41.7, 37.5);
        Mat input = new Mat(192, 192, CvType.CV_8UC3);
        crop.cut(picture, input);
        double mass = 0;
        double x = 0;
        double y = 0;
        for (int row = 0; row < input.rows(); row++) {
            for (int column = 0; column < input.cols(); column++) {
                double value = input.get(row, column)[0];
                mass += value;
                x += value * (column + 0.5);
                y += value * (row + 0.5);
            }
        }
        PixelPoint back = crop.toPicture(x / mass / 192, y / mass / 192);
        // OpenCV's warp works on a grid of 1/32 pixel.
        assertThat(back.x()).isCloseTo(40, within(0.05));
        assertThat(back.y()).isCloseTo(60, within(0.05));
    }

    @Test
    void ofBoxesOnOnePersonTheBestStays() {
        Detection best = new Detection(new ImageBox(0, 0, 10, 30), 0.9);
        Detection same = new Detection(new ImageBox(1, 1, 10, 30), 0.8);
        Detection other = new Detection(new ImageBox(8, 0, 10, 30), 0.7);
        assertThat(Suppression.apply(List.of(), 0.5)).isEmpty();
        assertThat(Suppression.apply(List.of(other, same, best), 0.5)).containsExactly(best, other);
        assertThat(Suppression.apply(List.of(same, best), 1)).containsExactly(best, same);
    }
}
