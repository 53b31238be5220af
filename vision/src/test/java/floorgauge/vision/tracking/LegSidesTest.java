package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.Body;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.Pose;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;

/** A runner seen from the side: 100 pixels high, legs that swing by a quarter of that 1.4 times a second, 12.5 looks a second. */
class LegSidesTest {

    private static final double STEP_SECONDS = 0.08;
    private static final double HEIGHT = 100;

    private static FloorEstimate floor(double x) {
        return new FloorEstimate(new FloorPoint(x, 0), FloorCovariance.isotropic(0.1));
    }

    private static List<PlayerObservation> run(int looks, long seed, IntPredicate exchanged, double score) {
        Random random = new Random(seed);
        List<PlayerObservation> track = new ArrayList<>();
        for (int i = 0; i < looks; i++) {
            double t = i * STEP_SECONDS;
            double middle = 100 + 150 * t;
            double swing = 25 * Math.sin(2 * Math.PI * 1.4 * t);
            List<Keypoint> joints = new ArrayList<>(
                    Collections.nCopies(Joint.values().length, new Keypoint(new PixelPoint(middle, 50), 0.9)));
            boolean other = exchanged.test(i);
            for (int leg = 0; leg < 2; leg++) {
                double side = leg == 0 ? swing : -swing;
                boolean left = leg == 0 != other;
                joints.set(
                        (left ? Joint.LEFT_KNEE : Joint.RIGHT_KNEE).ordinal(),
                        joint(random, middle + 0.5 * side, 75, score));
                joints.set(
                        (left ? Joint.LEFT_ANKLE : Joint.RIGHT_ANKLE).ordinal(),
                        joint(random, middle + side, 98, score));
            }
            Body body = new Body(
                    Optional.of(floor(other ? 2 : 1)),
                    Optional.of(floor(other ? 1 : 2)),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty());
            track.add(new PlayerObservation(
                    i,
                    t,
                    floor(0),
                    FootSource.ANKLES,
                    Optional.of(new ImageBox(middle - 20, 0, 40, HEIGHT)),
                    Optional.of(new Pose(joints)),
                    body,
                    0.9));
        }
        return track;
    }

    private static Keypoint joint(Random random, double x, double y, double score) {
        return new Keypoint(new PixelPoint(x + random.nextGaussian(), y + random.nextGaussian()), score);
    }

    /** The true left foot stands at x = 1 in every look. */
    private static long right(List<PlayerObservation> track) {
        return track.stream()
                .filter(o -> o.body().leftAnkle().orElseThrow().mean().xMetres() == 1)
                .count();
    }

    @Test
    void nobodyAndOneLookStayAsTheyAre() {
        assertThat(LegSides.kept(List.of())).isEmpty();
        List<PlayerObservation> one = run(1, 1, i -> true, 0.9);
        assertThat(LegSides.kept(one)).isEqualTo(one);
    }

    @Test
    void whatIsRightStaysAsItIs() {
        List<PlayerObservation> track = run(60, 2, i -> false, 0.9);
        assertThat(LegSides.kept(track)).isEqualTo(track);
    }

    @Test
    void singleLooksAndShortRunsAreTakenBack() {
        for (long seed = 10; seed < 20; seed++) {
            Random random = new Random(seed);
            boolean[] exchanged = new boolean[80];
            for (int i = 0; i < exchanged.length; i++) {
                boolean begins = random.nextDouble() < 0.06;
                for (int k = i; begins && k < Math.min(i + 1 + random.nextInt(3), exchanged.length); k++) {
                    exchanged[k] = true;
                }
            }
            List<PlayerObservation> track = run(exchanged.length, seed, i -> exchanged[i], 0.9);
            assertThat(right(LegSides.kept(track)))
                    .as("seed %d, before %d", seed, right(track))
                    .isGreaterThanOrEqualTo(78);
        }
    }

    @Test
    void theJointsGoWithTheFeet() {
        List<PlayerObservation> track = run(20, 3, i -> i == 7, 0.9);
        List<PlayerObservation> kept = LegSides.kept(track);
        Pose before = track.get(7).pose().orElseThrow();
        Pose after = kept.get(7).pose().orElseThrow();
        assertThat(after.at(Joint.LEFT_ANKLE)).isEqualTo(before.at(Joint.RIGHT_ANKLE));
        assertThat(after.at(Joint.RIGHT_KNEE)).isEqualTo(before.at(Joint.LEFT_KNEE));
        assertThat(after.at(Joint.LEFT_SHOULDER)).isEqualTo(before.at(Joint.LEFT_SHOULDER));
    }

    @Test
    void anklesThatWereNotSeenTellNothing() {
        List<PlayerObservation> track = run(20, 4, i -> i == 9, 0.1);
        assertThat(LegSides.kept(track)).isEqualTo(track);
    }
}
