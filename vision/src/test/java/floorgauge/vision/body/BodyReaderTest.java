package floorgauge.vision.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Body;
import floorgauge.court.track.Facing;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Before a level camera 6 m above the floor that looks along x: focal length 1000 pixels, horizon at row -400. */
class BodyReaderTest {

    private static final double FOCAL = 1000;
    private static final double HORIZON = -400;
    private static final double CAMERA_HEIGHT = 6;
    private static final double CAMERA_X = -12;
    private static final int WIDTH = 1280;
    private static final int HEIGHT = 720;

    private static final CourtCalibration COURT = CourtCalibration.known(
            RuleSet.fiba(),
            new double[] {
                0,
                CAMERA_X,
                FOCAL * CAMERA_HEIGHT - CAMERA_X * HORIZON,
                -CAMERA_HEIGHT,
                0,
                CAMERA_HEIGHT * WIDTH / 2.0,
                0,
                1,
                -HORIZON
            },
            WIDTH,
            HEIGHT);

    private static final FloorPoint SPOT = new FloorPoint(-2, 1);

    /** Pixels for a metre at the spot: the camera is level, so the same up and across. */
    private static final double SCALE = FOCAL / (SPOT.xMetres() - CAMERA_X);

    /** A point of a body on the spot: so far to the picture's right of it and so high. */
    private static PixelPoint at(double rightMetres, double upMetres) {
        PixelPoint foot = COURT.pixelAt(SPOT);
        return new PixelPoint(foot.x() + SCALE * rightMetres, foot.y() - SCALE * upMetres);
    }

    private static ImageBox box() {
        PixelPoint foot = at(0, 0);
        // Down to the toe.
        return new ImageBox(foot.x() - 0.3 * SCALE, foot.y() - 1.85 * SCALE, 0.6 * SCALE, 1.89 * SCALE);
    }

    /** A body whose right side points so far to the picture's right, and whose nose lies ahead of it. */
    private static Pose pose(double rightShare, double noseRightMetres, double ankleScore) {
        List<Keypoint> joints = new ArrayList<>();
        for (Joint joint : Joint.values()) {
            String name = joint.name();
            double side = name.startsWith("RIGHT") ? 1 : name.startsWith("LEFT") ? -1 : 0;
            double half = 0;
            double up = 1.6;
            double score = 0.8;
            if (name.endsWith("SHOULDER")) {
                half = 0.2;
                up = 1.5;
            } else if (name.endsWith("HIP")) {
                half = 0.1;
                up = 1.0;
            } else if (name.endsWith("KNEE")) {
                half = 0.1;
                up = 0.5;
            } else if (name.endsWith("ANKLE")) {
                half = 0.15;
                up = FootFinder.ANKLE_HEIGHT * FootFinder.STATURE_METRES;
                score = ankleScore;
            }
            double right = joint == Joint.NOSE ? noseRightMetres : side * half * rightShare;
            joints.add(new Keypoint(at(right, up), score));
        }
        return new Pose(joints);
    }

    @Test
    void feetAreMidwayBetweenTheAnklesContacts() {
        FootPoint foot = new FootFinder(COURT)
                .find(box(), Optional.of(pose(1, 0, 0.8)), List.of())
                .orElseThrow();
        assertThat(foot.source()).isEqualTo(FootSource.ANKLES);
        assertThat(foot.position().mean().distanceTo(SPOT)).isLessThan(0.02);
    }

    @Test
    void withoutAnklesTheBoxStandsInWithALargerError() {
        FootFinder finder = new FootFinder(COURT);
        FootPoint ankles =
                finder.find(box(), Optional.of(pose(1, 0, 0.8)), List.of()).orElseThrow();
        FootPoint bottom =
                finder.find(box(), Optional.of(pose(1, 0, 0.1)), List.of()).orElseThrow();
        assertThat(bottom.source()).isEqualTo(FootSource.BOX_BOTTOM);
        assertThat(bottom.position().mean().distanceTo(SPOT)).isLessThan(0.02);
        assertThat(bottom.position().covariance().standardErrorMetres())
                .isGreaterThan(ankles.position().covariance().standardErrorMetres());
    }

    @Test
    void feetHiddenByAnotherOrCutOffAreLessCertain() {
        FootFinder finder = new FootFinder(COURT);
        double clear = error(finder.find(box(), Optional.empty(), List.of()));
        ImageBox inFront = new ImageBox(box().left() - 5, box().top() + 40, box().width() + 10, box().height());
        double hidden = error(finder.find(box(), Optional.empty(), List.of(inFront)));
        ImageBox half = new ImageBox(box().left(), box().top(), box().width(), 0.5 * box().height());
        double cutOff = error(finder.find(half, Optional.empty(), List.of()));
        assertThat(hidden).isGreaterThan(1.5 * clear);
        assertThat(cutOff).isGreaterThan(1.5 * clear);
    }

    private static double error(Optional<FootPoint> foot) {
        return foot.orElseThrow().position().covariance().standardErrorMetres();
    }

    @Test
    void aBoxAboveTheHorizonStandsNowhere() {
        ImageBox sky = new ImageBox(600, -700, 40, 100);
        assertThat(new FootFinder(COURT).find(sky, Optional.empty(), List.of())).isEmpty();
    }

    @Test
    void facingAwayAndTowardsTheCamera() {
        BodyReader reader = new BodyReader(COURT);
        Facing away = reader.read(box(), pose(1, 0, 0.8), SPOT).facing().orElseThrow();
        assertThat(away.radians()).isCloseTo(0, within(0.1));
        assertThat(away.standardErrorRadians()).isBetween(0.15, 1.0);
        Facing towards = reader.read(box(), pose(-1, 0, 0.8), SPOT).facing().orElseThrow();
        assertThat(Math.abs(towards.radians())).isCloseTo(Math.PI, within(0.1));
    }

    @Test
    void facingAcrossIsToldByTheNose() {
        BodyReader reader = new BodyReader(COURT);
        // The picture's left is the camera's left: +y for a camera that looks along x.
        Facing left = reader.read(box(), pose(0, -0.15, 0.8), SPOT).facing().orElseThrow();
        assertThat(left.radians()).isCloseTo(Math.PI / 2, within(0.2));
        Facing right = reader.read(box(), pose(0, 0.15, 0.8), SPOT).facing().orElseThrow();
        assertThat(right.radians()).isCloseTo(-Math.PI / 2, within(0.2));
    }

    @Test
    void fromHighUpFacingAcrossIsToldByWhichShoulderIsFarther() {
        BodyReader reader = new BodyReader(PitchedCamera.court());
        for (double facing : new double[] {Math.PI / 2, -Math.PI / 2, 0.8, -0.8}) {
            Facing found = reader.read(box(), shouldersOnly(facing), new FloorPoint(0, 0))
                    .facing()
                    .orElseThrow();
            assertThat(found.radians() * facing).isPositive();
            assertThat(found.radians()).isCloseTo(facing, within(1.5 * found.standardErrorRadians()));
        }
    }

    /** Someone at the centre of the court as the pitched camera sees him, whose nose is hidden. */
    private static Pose shouldersOnly(double facing) {
        List<Keypoint> keypoints = new ArrayList<>();
        for (Joint joint : Joint.values()) {
            keypoints.add(new Keypoint(new PixelPoint(0, 0), 0));
        }
        double half = 0.22 * FootFinder.STATURE_METRES / 2;
        // The right hand side of one who faces along x is -y.
        double x = half * Math.sin(facing);
        double y = -half * Math.cos(facing);
        keypoints.set(Joint.RIGHT_SHOULDER.ordinal(), new Keypoint(PitchedCamera.pixelAt(x, y, 1.5), 0.9));
        keypoints.set(Joint.LEFT_SHOULDER.ordinal(), new Keypoint(PitchedCamera.pixelAt(-x, -y, 1.5), 0.9));
        return new Pose(keypoints);
    }

    @Test
    void whatIsNotSeenStaysEmpty() {
        List<Keypoint> faint = new ArrayList<>();
        for (Keypoint joint : pose(1, 0, 0.8).keypoints()) {
            faint.add(new Keypoint(joint.position(), 0.1));
        }
        assertThat(new BodyReader(COURT).read(box(), new Pose(faint), SPOT)).isEqualTo(Body.UNSEEN);
    }

    @Test
    void stanceIsOverTheShoulders() {
        // Ankles 0.30 m apart under shoulders of an average player of 0.43 m.
        Body body = new BodyReader(COURT).read(box(), pose(1, 0, 0.8), SPOT);
        assertThat(body.stanceOverShoulders().orElseThrow()).isCloseTo(0.30 / 0.431, within(0.03));
    }
}
