package floorgauge.vision.number;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import floorgauge.vision.network.NumberReader;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;

class TorsoCropTest {

    @BeforeAll
    static void load() {
        OpenCv.load();
    }

    private static Pose torso(
            PixelPoint left, PixelPoint right, PixelPoint leftHip, PixelPoint rightHip, double score) {
        List<Keypoint> joints =
                new ArrayList<>(Collections.nCopies(Joint.values().length, new Keypoint(new PixelPoint(0, 0), 0.9)));
        joints.set(Joint.LEFT_SHOULDER.ordinal(), new Keypoint(left, score));
        joints.set(Joint.RIGHT_SHOULDER.ordinal(), new Keypoint(right, score));
        joints.set(Joint.LEFT_HIP.ordinal(), new Keypoint(leftHip, score));
        joints.set(Joint.RIGHT_HIP.ordinal(), new Keypoint(rightHip, score));
        return new Pose(joints);
    }

    private static Pose upright(double width, double length, double score) {
        return torso(
                new PixelPoint(100 + width / 2, 100),
                new PixelPoint(100 - width / 2, 100),
                new PixelPoint(100 + width / 3, 100 + length),
                new PixelPoint(100 - width / 3, 100 + length),
                score);
    }

    @Test
    void hiddenJointsAreNoTorso() {
        assertThat(TorsoCrop.of(upright(40, 60, 0.1))).isEmpty();
    }

    @Test
    void aTorsoOfAFewPixelsIsNone() {
        assertThat(TorsoCrop.of(upright(9, 12, 0.9))).isEmpty();
    }

    @Test
    void aTorsoFromTheSideShowsNoNumber() {
        assertThat(TorsoCrop.of(upright(10, 60, 0.9))).isEmpty();
    }

    @Test
    void chestAndBackAreTakenAlike() {
        assertThat(TorsoCrop.of(upright(40, 60, 0.9))).isPresent();
        assertThat(TorsoCrop.of(upright(-40, 60, 0.9))).isPresent();
    }

    /** A red spot above the middle of the torso, a green one to the reader's right. */
    private static Mat spots(double dx, double dy) {
        Mat picture = new Mat(260, 260, CvType.CV_8UC3, Scalar.all(0));
        // From the torso's middle (100, 130), up the body by 16 and to the right by 16 pixels.
        spot(picture, 100 + 16 * dx, 130 + 16 * dy, new Scalar(0, 0, 255));
        spot(picture, 100 - 16 * dy, 130 + 16 * dx, new Scalar(0, 255, 0));
        return picture;
    }

    private static void spot(Mat picture, double x, double y, Scalar colour) {
        int column = (int) Math.round(x);
        int row = (int) Math.round(y);
        picture.submat(row - 4, row + 5, column - 4, column + 5).setTo(colour);
    }

    private static double[] at(Mat crop, double right, double up) {
        // The crop's side is 1.25 torsos of 60 pixels; its middle lies a twentieth above the torso's.
        double scale = NumberReader.SIDE / 75.0;
        int column = (int) Math.round(31.5 + scale * right);
        int row = (int) Math.round(31.5 - scale * (up - 3));
        return crop.get(row, column);
    }

    @Test
    void theCropIsUprightHoweverTheBodyLeans() {
        for (int degrees = -90; degrees <= 90; degrees += 30) {
            double upX = Math.sin(Math.toRadians(degrees));
            double upY = -Math.cos(Math.toRadians(degrees));
            TorsoCrop crop = new TorsoCrop(
                    new PixelPoint(100 - 30 * upX, 130 - 30 * upY), new PixelPoint(100 + 30 * upX, 130 + 30 * upY));
            Mat input = new Mat(NumberReader.SIDE, NumberReader.SIDE, CvType.CV_8UC3);
            crop.cut(spots(upX, upY), input);
            assertThat(at(input, 0, 16)[2]).as("above at %d degrees", degrees).isGreaterThan(200);
            assertThat(at(input, 16, 0)[1]).as("right at %d degrees", degrees).isGreaterThan(200);
            assertThat(at(input, -16, 0)[1]).as("left at %d degrees", degrees).isLessThan(30);
        }
    }

    @Test
    void aLargeTorsoIsAveragedDown() {
        Mat picture = new Mat(1200, 1200, CvType.CV_8UC3, Scalar.all(0));
        for (int column = 0; column < 1200; column += 2) {
            picture.col(column).setTo(Scalar.all(200));
        }
        Mat input = new Mat(NumberReader.SIDE, NumberReader.SIDE, CvType.CV_8UC3);
        new TorsoCrop(new PixelPoint(600, 900), new PixelPoint(600, 300)).cut(picture, input);
        assertThat(input.get(32, 32)[0]).isCloseTo(100, within(25.0));
    }
}
