package floorgauge.vision.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PlumbLineTest {

    private static final long SEED = 17;

    private final PlumbLine plumb = new PlumbLine(PitchedCamera.court());

    @Test
    void aPointAboveTheHorizonHasNoFloorBelow() {
        assertThat(plumb.below(new FloorPoint(0, 0), new PixelPoint(640, -2000), 1, 1, 0.1))
                .isEmpty();
    }

    @Test
    void findsTheFloorBelowAPointOfKnownHeight() {
        Random random = new Random(SEED);
        for (int i = 0; i < 100; i++) {
            FloorPoint foot = new FloorPoint(-7 + 17 * random.nextDouble(), -5 + 10 * random.nextDouble());
            double height = 0.3 + 1.6 * random.nextDouble();
            PixelPoint seen = PitchedCamera.pixelAt(foot.xMetres(), foot.yMetres(), height);
            FloorEstimate found =
                    plumb.below(new FloorPoint(0, 0), seen, 1, height, 0.05).orElseThrow();
            assertThat(found.mean().distanceTo(foot))
                    .as("seed %d, case %d", SEED, i)
                    .isLessThan(0.001);
        }
    }

    @Test
    void anErrorOfTheHeightBecomesOneAlongTheLineOfSight() {
        PixelPoint seen = PitchedCamera.pixelAt(0, 0, 1);
        FloorEstimate found =
                plumb.below(new FloorPoint(0.3, 0.1), seen, 0, 1, 0.1).orElseThrow();
        // Similar triangles: 4 m below the camera and 12 m ahead, a metre of height is 12/4 m of floor.
        assertThat(Math.sqrt(found.covariance().xx())).isCloseTo(0.1 * 12 / 4, within(0.005));
        assertThat(Math.sqrt(found.covariance().yy())).isLessThan(0.005);
    }

    @Test
    void feetBelowThePictureStandUnderTheKnees() {
        double x = -6.6;
        assertThat(PitchedCamera.pixelAt(x, 0, 0).y()).isGreaterThan(PitchedCamera.HEIGHT);
        List<Keypoint> joints = new ArrayList<>();
        for (Joint joint : Joint.values()) {
            String name = joint.name();
            double side = name.startsWith("RIGHT") ? -0.1 : 0.1;
            double up = name.endsWith("ANKLE") ? 0.07 : name.endsWith("KNEE") ? 0.5 : name.endsWith("HIP") ? 0.95 : 1.6;
            joints.add(new Keypoint(PitchedCamera.pixelAt(x, side, up), 0.8));
        }
        double top = PitchedCamera.pixelAt(x, 0, 1.85).y();
        double left = PitchedCamera.pixelAt(x, 0.3, 1).x();
        double right = PitchedCamera.pixelAt(x, -0.3, 1).x();
        ImageBox cut = new ImageBox(left, top, right - left, PitchedCamera.HEIGHT - 1 - top);
        FootFinder finder = new FootFinder(PitchedCamera.court());
        FootPoint knees =
                finder.find(cut, Optional.of(new Pose(joints)), List.of()).orElseThrow();
        assertThat(knees.source()).isEqualTo(FootSource.BOX_BOTTOM);
        assertThat(knees.position().mean().distanceTo(new FloorPoint(x, 0))).isLessThan(0.1);
        FootPoint crown = finder.find(cut, Optional.empty(), List.of()).orElseThrow();
        assertThat(crown.position().mean().distanceTo(new FloorPoint(x, 0))).isLessThan(0.3);
        assertThat(crown.position().covariance().standardErrorMetres())
                .isGreaterThan(knees.position().covariance().standardErrorMetres());
    }

    @Test
    void aHeadStandsOverTheSameSpotAtItsTrueHeight() {
        FloorPoint spot = new FloorPoint(2, 1.5);
        PixelPoint head = PitchedCamera.pixelAt(spot.xMetres(), spot.yMetres(), 1.93);
        double sole = PitchedCamera.pixelAt(spot.xMetres(), spot.yMetres(), 0).y();
        ImageBox box = new ImageBox(head.x() - 15, head.y(), 30, sole - head.y());
        UnderHead under = new FootFinder(PitchedCamera.court())
                .underHead(box, Optional.empty())
                .orElseThrow();
        assertThat(under.at(1.93, 0.05).mean().distanceTo(spot)).isLessThan(0.01);
        // 0.1 m of height is 0.1 / (5 - 1.93) of the way from the spot to the camera.
        double away = Math.hypot(spot.xMetres() - PitchedCamera.X, spot.yMetres());
        assertThat(under.at(2.03, 0.05).mean().distanceTo(spot)).isCloseTo(away * 0.1 / (5 - 1.93), within(0.02));
        assertThat(under.at(1.93, 0.3).covariance().standardErrorMetres())
                .isGreaterThan(under.at(1.93, 0.05).covariance().standardErrorMetres());
    }

    @Test
    void raisedArmsHideWhereTheHeadEnds() {
        ImageBox box = new ImageBox(600, 200, 60, 180);
        List<Keypoint> joints = new ArrayList<>();
        for (Joint joint : Joint.values()) {
            double y = joint == Joint.LEFT_WRIST ? 205 : joint == Joint.NOSE ? 230 : 300;
            joints.add(new Keypoint(new PixelPoint(630, y), 0.8));
        }
        assertThat(new FootFinder(PitchedCamera.court()).underHead(box, Optional.of(new Pose(joints))))
                .isEmpty();
    }

    @Test
    void fromALowCameraAHigherAnkleIsInTheAir() {
        FloorPoint spot = new FloorPoint(-2, 0);
        ImageBox box = box(spot);
        FootFinder finder = new FootFinder(PitchedCamera.court());
        double still = finder.find(box, Optional.of(legs(spot, 0)), List.of())
                .orElseThrow()
                .position()
                .mean()
                .distanceTo(spot);
        FootPoint lifted =
                finder.find(box, Optional.of(legs(spot, 0.3)), List.of()).orElseThrow();
        double midway = 0.15 * 10 / 5;
        assertThat(still).isLessThan(0.03);
        assertThat(lifted.position().mean().distanceTo(spot)).isLessThan(0.6 * midway);
        assertThat(lifted.position().covariance().standardErrorMetres())
                .isGreaterThan(finder.find(box, Optional.of(legs(spot, 0)), List.of())
                        .orElseThrow()
                        .position()
                        .covariance()
                        .standardErrorMetres());
    }

    private static ImageBox box(FloorPoint spot) {
        double top = PitchedCamera.pixelAt(spot.xMetres(), spot.yMetres(), FootFinder.STATURE_METRES)
                .y();
        double sole = PitchedCamera.pixelAt(spot.xMetres(), spot.yMetres(), 0).y();
        double height = (sole - top) / (1 - FootFinder.TOE);
        double middle = PitchedCamera.pixelAt(spot.xMetres(), spot.yMetres(), 1).x();
        return new ImageBox(middle - height / 6, top, height / 3, height);
    }

    /** Both feet beside the spot, the right one lifted, its knee where it may be. */
    private static Pose legs(FloorPoint spot, double lift) {
        double sole = PitchedCamera.pixelAt(spot.xMetres(), spot.yMetres(), 0).y();
        List<Keypoint> joints = new ArrayList<>();
        for (Joint joint : Joint.values()) {
            double side = joint.name().startsWith("RIGHT") ? -0.15 : 0.15;
            PixelPoint at = PitchedCamera.pixelAt(spot.xMetres(), spot.yMetres() + side, 1);
            if (joint == Joint.LEFT_ANKLE || joint == Joint.RIGHT_ANKLE) {
                double up = joint == Joint.RIGHT_ANKLE ? lift : 0;
                double lifted = PitchedCamera.pixelAt(spot.xMetres(), spot.yMetres(), up)
                                .y()
                        - sole;
                at = new PixelPoint(
                        at.x(), sole - FootFinder.ANKLE_HEIGHT * box(spot).height() + lifted);
            }
            joints.add(new Keypoint(at, 0.8));
        }
        return new Pose(joints);
    }
}
