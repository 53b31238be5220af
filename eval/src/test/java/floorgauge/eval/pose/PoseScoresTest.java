package floorgauge.eval.pose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class PoseScoresTest {

    private static final Offset<Double> EXACT = Offset.offset(1e-9);
    private static final ObjectKeypointSimilarity OKS = new ObjectKeypointSimilarity();

    @Test
    void nothingToFind() {
        PoseScores none = PoseScores.of(List.of());
        assertThat(none.averagePrecision()).isNaN();
        assertThat(none.averageRecall()).isNaN();
        PoseFrame onlyFalse = new PoseFrame(List.of(), List.of(found(at(0, 0), 0.9)));
        assertThat(PoseScores.of(List.of(onlyFalse)).averagePrecision()).isNaN();
    }

    @Test
    void nothingFound() {
        PoseScores scores = PoseScores.of(List.of(new PoseFrame(List.of(wanted(at(0, 0))), List.of())));
        assertThat(scores.averagePrecision()).isZero();
        assertThat(scores.averageRecall()).isZero();
    }

    @Test
    void everythingFoundExactly() {
        PoseFrame frame = new PoseFrame(List.of(wanted(at(0, 0))), List.of(found(at(0, 0), 0.3)));
        PoseScores scores = PoseScores.of(List.of(frame));
        assertThat(scores.averagePrecision()).isCloseTo(1, EXACT);
        assertThat(scores.averageRecall()).isCloseTo(1, EXACT);
        assertThat(scores.points()).hasSize(10);
        assertThat(scores.points().get(9).threshold()).isEqualTo(0.95);
    }

    /**
     * By hand, after cocodataset.org's definition. Area 10000, so s² = 10000. Labelled: the nose (sigma 0.026, k = 0.052)
     * and the left hip (sigma 0.107, k = 0.214). The result is 3 pixels off at the nose and 40 at the hip:
     * nose: 9 / (2 * 10000 * 0.002704) = 0.166420; exp(-0.166420) = 0.846690.
     * hip: 1600 / (2 * 10000 * 0.045796) = 1.746878; exp(-1.746878) = 0.174317.
     * Similarity (0.846690 + 0.174317) / 2 = 0.510503: a match at threshold 0.50 alone, so AP = AR = 1 of 10.
     */
    @Test
    void cocoCaseByHand() {
        PosedPerson truth = new PosedPerson(
                pose(0, 0), EnumSet.of(Joint.NOSE, Joint.LEFT_HIP), 10000, new ImageBox(0, 0, 100, 100));
        Pose moved = with(with(pose(0, 0), Joint.NOSE, 3, 0), Joint.LEFT_HIP, 0, -40);
        PosedPerson result = PosedPerson.result(moved);
        assertThat(OKS.of(truth, result)).isCloseTo(0.510503, Offset.offset(1e-6));
        PoseFrame frame =
                new PoseFrame(List.of(new PoseFrame.Truth(truth, false)), List.of(new PoseFrame.Result(result, 0.5)));
        PoseScores scores = PoseScores.of(List.of(frame));
        assertThat(scores.averagePrecision()).isCloseTo(0.1, EXACT);
        assertThat(scores.averageRecall()).isCloseTo(0.1, EXACT);
    }

    /**
     * By hand: two wanted, in the order of score a right, a wrong and a right result. Precision at the ranks 1, 1/2, 2/3,
     * from the right 1, 2/3, 2/3; recall 1/2, 1/2, 1. Of the 101 recalls 0.00 to 0.50 (51) have precision 1, 0.51 to 1.00
     * (50) have 2/3.
     */
    @Test
    void interpolatedPrecisionByHand() {
        PoseFrame frame = new PoseFrame(
                List.of(wanted(at(0, 0)), wanted(at(500, 0))),
                List.of(found(at(0, 0), 0.9), found(at(0, 900), 0.8), found(at(500, 0), 0.7)));
        PoseScores scores = PoseScores.of(List.of(frame));
        assertThat(scores.averagePrecision()).isCloseTo((51 + 50 * 2.0 / 3) / 101, EXACT);
        assertThat(scores.averageRecall()).isCloseTo(1, EXACT);
    }

    @Test
    void aTruthIsMatchedOnceByTheBestScoreFirst() {
        PoseFrame frame = new PoseFrame(
                List.of(wanted(at(0, 0))), List.of(found(at(1, 0), 0.4), found(at(0, 0), 0.2), found(at(2, 0), 0.9)));
        PoseScores scores = PoseScores.of(List.of(frame));
        // The first by score takes the truth; the two after it are false but come after full recall.
        assertThat(scores.points().get(0).averagePrecision()).isCloseTo(1, EXACT);
        assertThat(scores.points().get(0).recall()).isEqualTo(1);
    }

    @Test
    void anIgnoredPersonCountsForNothing() {
        PoseFrame frame = new PoseFrame(
                List.of(new PoseFrame.Truth(at(0, 0), true), wanted(at(500, 0))),
                List.of(found(at(0, 0), 0.9), found(at(500, 0), 0.5)));
        assertThat(PoseScores.of(List.of(frame)).averagePrecision()).isCloseTo(1, EXACT);
    }

    @Test
    void anUnlabelledPersonLetsOffAResultInItsBox() {
        PosedPerson unlabelled = new PosedPerson(pose(0, 0), Set.of(), 4000, new ImageBox(0, 0, 100, 100));
        PosedPerson near = PosedPerson.result(pose(-50, -50));
        PosedPerson far = PosedPerson.result(pose(5000, 0));
        assertThat(OKS.of(unlabelled, near)).isEqualTo(1);
        assertThat(OKS.of(unlabelled, far)).isLessThan(1e-9);
        PoseFrame frame = new PoseFrame(
                List.of(new PoseFrame.Truth(unlabelled, false), wanted(at(500, 0))),
                List.of(new PoseFrame.Result(near, 0.9), found(at(500, 0), 0.5)));
        assertThat(PoseScores.of(List.of(frame)).averagePrecision()).isCloseTo(1, EXACT);
    }

    @Test
    void sizesOutsideTheRangeAreLeftOut() {
        PosedPerson small = new PosedPerson(pose(0, 0), EnumSet.allOf(Joint.class), 900, new ImageBox(0, 0, 30, 30));
        PoseFrame frame = new PoseFrame(
                List.of(new PoseFrame.Truth(small, false), wanted(at(500, 0))),
                List.of(found(at(500, 0), 0.5), new PoseFrame.Result(tiny(900, 900), 0.9)));
        // The lone small result is outside the range of medium people, so it is not held against them.
        assertThat(PoseScores.of(List.of(frame), AreaRange.MEDIUM).averagePrecision())
                .isCloseTo(1, EXACT);
        assertThat(PoseScores.of(List.of(frame), AreaRange.LARGE).averagePrecision())
                .isNaN();
        assertThat(PoseScores.of(List.of(frame)).averageRecall()).isCloseTo(0.5, EXACT);
    }

    @Test
    void noMoreThanTwentyResultsAPicture() {
        List<PoseFrame.Result> results = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            results.add(found(at(2000 + 300 * i, 0), 0.9));
        }
        results.add(found(at(0, 0), 0.1));
        PoseScores scores = PoseScores.of(List.of(new PoseFrame(List.of(wanted(at(0, 0))), results)));
        assertThat(scores.averageRecall()).isZero();
    }

    @Test
    void shareOfCorrectKeypoints() {
        CorrectKeypoints none = CorrectKeypoints.ofBox(0.2);
        assertThat(none.share()).isNaN();
        assertThat(none.share(Joint.NOSE)).isNaN();
        PosedPerson truth = new PosedPerson(
                pose(0, 0), EnumSet.of(Joint.NOSE, Joint.LEFT_ANKLE), 10000, new ImageBox(0, 0, 50, 100));
        CorrectKeypoints box = CorrectKeypoints.ofBox(0.2);
        // The limit is 0.2 * 100 = 20 pixels: the nose is exactly there, the ankle just beyond.
        box.add(truth, with(with(pose(0, 0), Joint.NOSE, 20, 0), Joint.LEFT_ANKLE, 0, 20.01));
        assertThat(box.share()).isEqualTo(0.5);
        assertThat(box.share(Joint.NOSE)).isEqualTo(1);
        assertThat(box.share(Joint.LEFT_ANKLE)).isZero();
        CorrectKeypoints torso = CorrectKeypoints.ofTorso(0.2);
        torso.add(truth, truth.pose());
        assertThat(torso.share()).isNaN();
        PosedPerson whole = at(0, 0);
        double length = whole.pose()
                .at(Joint.LEFT_SHOULDER)
                .position()
                .distanceTo(whole.pose().at(Joint.RIGHT_HIP).position());
        torso.add(whole, with(whole.pose(), Joint.NOSE, 0.21 * length, 0));
        assertThat(torso.share()).isCloseTo(16.0 / 17, EXACT);
        assertThatThrownBy(() -> CorrectKeypoints.ofBox(0)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> new PosedPerson(pose(0, 0), Set.of(), 0, new ImageBox(0, 0, 1, 1)))
                .hasMessageContaining("area");
        assertThatThrownBy(() -> found(at(0, 0), Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new AreaRange(5, 4)).isInstanceOf(IllegalArgumentException.class);
    }

    private static PosedPerson at(double x, double y) {
        return new PosedPerson(
                pose(x, y), EnumSet.allOf(Joint.class), 5000, JointBox.around(pose(x, y), Set.of(Joint.values())));
    }

    private static PosedPerson tiny(double x, double y) {
        List<Keypoint> joints = new ArrayList<>();
        for (int i = 0; i < Joint.values().length; i++) {
            joints.add(new Keypoint(new PixelPoint(x + i % 4, y + i), 1));
        }
        return PosedPerson.result(new Pose(joints));
    }

    private static PoseFrame.Truth wanted(PosedPerson person) {
        return new PoseFrame.Truth(person, false);
    }

    private static PoseFrame.Result found(PosedPerson person, double score) {
        return new PoseFrame.Result(person, score);
    }

    /** Joints on a grid four wide, 20 pixels apart. */
    private static Pose pose(double x, double y) {
        List<Keypoint> joints = new ArrayList<>();
        for (int i = 0; i < Joint.values().length; i++) {
            joints.add(new Keypoint(new PixelPoint(x + 20 * (i % 4), y + 20 * (i / 4)), 1));
        }
        return new Pose(joints);
    }

    private static Pose with(Pose pose, Joint joint, double dx, double dy) {
        List<Keypoint> joints = new ArrayList<>(pose.keypoints());
        PixelPoint before = pose.at(joint).position();
        joints.set(joint.ordinal(), new Keypoint(new PixelPoint(before.x() + dx, before.y() + dy), 1));
        return new Pose(joints);
    }
}
