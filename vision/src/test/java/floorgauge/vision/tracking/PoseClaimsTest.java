package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import floorgauge.vision.network.Detection;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PoseClaimsTest {

    private static final ImageBox FRONT = new ImageBox(100, 100, 50, 150);

    /** Joints spread over a box. */
    private static Pose poseIn(ImageBox box) {
        List<Keypoint> joints = new ArrayList<>();
        for (Joint joint : Joint.values()) {
            double down = 0.05 + 0.9 * joint.ordinal() / (Joint.values().length - 1);
            double across = joint.name().startsWith("LEFT") ? 0.1 : 0.9;
            joints.add(new Keypoint(
                    new PixelPoint(box.left() + across * box.width(), box.top() + down * box.height()), 0.8));
        }
        return new Pose(joints);
    }

    @Test
    void nobodyClaimsNothing() {
        assertThat(PoseClaims.settled(List.of(), List.of())).isEmpty();
    }

    @Test
    void peopleApartKeepTheirPoses() {
        ImageBox far = new ImageBox(400, 100, 50, 150);
        List<PoseClaims.Claim> claims = PoseClaims.settled(
                List.of(new Detection(far, 0.9), new Detection(FRONT, 0.8)), List.of(poseIn(far), poseIn(FRONT)));
        assertThat(claims).allSatisfy(c -> assertThat(c.pose()).isPresent());
    }

    @Test
    void whoStandsBehindLosesThePoseOfWhoStandsInFront() {
        ImageBox behind = new ImageBox(130, 80, 45, 140);
        List<PoseClaims.Claim> claims = PoseClaims.settled(
                List.of(new Detection(behind, 0.9), new Detection(FRONT, 0.8)), List.of(poseIn(FRONT), poseIn(FRONT)));
        assertThat(claims).hasSize(2);
        assertThat(claims.get(0).pose()).isEmpty();
        assertThat(claims.get(1).pose()).isPresent();
    }

    @Test
    void aBoxAboutTheUpperBodyGoes() {
        ImageBox upper = new ImageBox(102, 100, 46, 70);
        List<PoseClaims.Claim> claims = PoseClaims.settled(
                List.of(new Detection(upper, 0.9), new Detection(FRONT, 0.8)), List.of(poseIn(FRONT), poseIn(FRONT)));
        assertThat(claims).hasSize(1);
        assertThat(claims.get(0).detection().box()).isEqualTo(FRONT);
    }
}
