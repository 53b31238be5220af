package floorgauge.vision.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.opencv.core.Core;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;

class PoseEstimatorTest {

    @TempDir
    Path folder;

    @Test
    void nobodyGivesNoPose() {
        Mat picture = GoldenTensors.picture("pose-fast");
        try (PoseEstimator estimator = new PoseEstimator(GoldenTensors.models(), PoseQuality.FAST)) {
            assertThat(estimator.estimate(picture, List.of())).isEmpty();
            assertThat(estimator.estimate(List.of(), List.of())).isEmpty();
            assertThat(estimator.estimate(List.of(picture, picture), List.of(List.of(), List.of())))
                    .containsExactly(List.of(), List.of());
            assertThatThrownBy(() -> estimator.estimate(List.of(picture), List.of()))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    /** Reference: TensorFlow.js 4 on the source network. */
    @ParameterizedTest
    @EnumSource
    void theJointsAreThoseOfTheSourceNetwork(PoseQuality quality) throws IOException {
        Mat picture = GoldenTensors.picture(quality.network());
        double[][] expected = GoldenTensors.rows(quality.network());
        int side = quality.side();
        try (PoseEstimator estimator = new PoseEstimator(GoldenTensors.models(), quality)) {
            Pose pose = estimator
                    .estimate(picture, List.of(boxWhoseCropIsThePicture(side)))
                    .get(0);
            for (Joint joint : Joint.values()) {
                Keypoint found = pose.at(joint);
                double[] row = expected[joint.ordinal()];
                assertThat(found.score()).as("%s", joint).isCloseTo(row[2], within(1e-4));
                assertThat(found.position().y() + 0.5).as("%s", joint).isCloseTo(row[0] * side, within(0.01));
                assertThat(found.position().x() + 0.5).as("%s", joint).isCloseTo(row[1] * side, within(0.01));
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void briefNumbersShiftTheJointsLittle(PoseQuality quality) {
        Mat picture = GoldenTensors.picture(quality.network());
        List<ImageBox> box = List.of(boxWhoseCropIsThePicture(quality.side()));
        try (PoseEstimator single = new PoseEstimator(GoldenTensors.models(), quality);
                PoseEstimator brief = new PoseEstimator(GoldenTensors.models(), quality, Precision.BFLOAT16)) {
            Pose exact = single.estimate(picture, box).get(0);
            Pose rounded = brief.estimate(picture, box).get(0);
            double[] shifts = Arrays.stream(Joint.values())
                    .mapToDouble(
                            j -> exact.at(j).position().distanceTo(rounded.at(j).position()))
                    .sorted()
                    .toArray();
            // The figure is 0.8 of the side tall, and a drawing: on real people the shift is ten times smaller.
            assertThat(shifts[shifts.length / 2] / (0.8 * quality.side())).isLessThan(0.1);
            assertThat(shifts[shifts.length / 2])
                    .as("the rounding is really used")
                    .isPositive();
        }
    }

    @Test
    void aPersonAtThePicturesEdgeIsFoundWhereTheyStand() {
        Mat picture = GoldenTensors.picture("pose-fast");
        Mat padded = new Mat();
        int shift = 40;
        Core.copyMakeBorder(picture, padded, shift, 0, shift, 0, Core.BORDER_CONSTANT, Scalar.all(0));
        ImageBox box = boxWhoseCropIsThePicture(picture.cols());
        ImageBox shifted = new ImageBox(box.left() + shift, box.top() + shift, box.width(), box.height());
        try (PoseEstimator estimator = new PoseEstimator(GoldenTensors.models(), PoseQuality.FAST)) {
            Pose at = estimator.estimate(picture, List.of(box)).get(0);
            Pose away = estimator.estimate(padded, List.of(shifted)).get(0);
            for (Joint joint : Joint.values()) {
                PixelPoint expected = at.at(joint).position();
                assertThat(away.at(joint).position().x()).isCloseTo(expected.x() + shift, within(1e-6));
                assertThat(away.at(joint).position().y()).isCloseTo(expected.y() + shift, within(1e-6));
            }
        }
    }

    @Test
    void manyPeopleOverSeveralPicturesKeepTheirOrder() {
        Mat picture = GoldenTensors.picture("pose-fast");
        Mat mirrored = new Mat();
        Core.flip(picture, mirrored, 1);
        ImageBox box = boxWhoseCropIsThePicture(picture.cols());
        List<ImageBox> many = new ArrayList<>();
        for (int i = 0; i < 13; i++) {
            many.add(new ImageBox(box.left() + i, box.top(), box.width(), box.height()));
        }
        try (PoseEstimator estimator = new PoseEstimator(GoldenTensors.models(), PoseQuality.FAST)) {
            List<List<Pose>> together = estimator.estimate(List.of(picture, mirrored), List.of(many, List.of(box)));
            assertThat(together.get(0)).hasSize(13);
            assertThat(together.get(1)).hasSize(1);
            for (int i = 0; i < 13; i++) {
                assertSame(
                        together.get(0).get(i),
                        estimator.estimate(picture, List.of(many.get(i))).get(0));
            }
            assertSame(
                    together.get(1).get(0),
                    estimator.estimate(mirrored, List.of(box)).get(0));
        }
    }

    private static void assertSame(Pose a, Pose b) {
        for (Joint joint : Joint.values()) {
            if (b.at(joint).score() > 0.2) {
                assertThat(a.at(joint).position().distanceTo(b.at(joint).position()))
                        .isLessThan(0.1);
            }
        }
    }

    private static ImageBox boxWhoseCropIsThePicture(int side) {
        double inner = side / PoseCrop.MARGIN;
        double start = (side - inner) / 2 - 0.5;
        return new ImageBox(start, start, inner, inner);
    }
}
