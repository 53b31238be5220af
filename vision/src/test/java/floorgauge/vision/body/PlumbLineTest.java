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
}
