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
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LegClaimsTest {

    private static final ImageBox FRONT = new ImageBox(100, 100, 50, 150);
    private static final ImageBox BEHIND = new ImageBox(120, 80, 50, 140);

    /** All joints at the middle of the box but the ankles. */
    private static PoseClaims.Claim claim(ImageBox box, PixelPoint leftAnkle, PixelPoint rightAnkle) {
        PixelPoint middle = new PixelPoint(box.left() + box.width() / 2, box.top() + box.height() / 2);
        List<Keypoint> joints = new ArrayList<>();
        for (Joint joint : Joint.values()) {
            PixelPoint at = joint == Joint.LEFT_ANKLE ? leftAnkle : joint == Joint.RIGHT_ANKLE ? rightAnkle : middle;
            joints.add(new Keypoint(at, 0.8));
        }
        return new PoseClaims.Claim(new Detection(box, 0.9), Optional.of(new Pose(joints)));
    }

    private static double score(PoseClaims.Claim claim, Joint joint) {
        return claim.pose().orElseThrow().at(joint).score();
    }

    @Test
    void nobodyHasNoLegs() {
        assertThat(LegClaims.settled(List.of())).isEmpty();
    }

    @Test
    void whoStandsBehindLosesTheLegOfWhoStandsInFrontThoughItBeCalledTheOther() {
        PoseClaims.Claim front = claim(FRONT, new PixelPoint(110, 240), new PixelPoint(140, 242));
        PoseClaims.Claim behind = claim(BEHIND, new PixelPoint(142, 240), new PixelPoint(165, 210));
        List<PoseClaims.Claim> settled = LegClaims.settled(List.of(behind, front));
        assertThat(score(settled.get(0), Joint.LEFT_ANKLE)).isZero();
        assertThat(score(settled.get(0), Joint.RIGHT_ANKLE)).isEqualTo(0.8);
        assertThat(settled.get(1)).isEqualTo(front);
    }

    @Test
    void aPersonWithoutAPoseTakesNoLeg() {
        PoseClaims.Claim front = new PoseClaims.Claim(new Detection(FRONT, 0.9), Optional.empty());
        PoseClaims.Claim behind = claim(BEHIND, new PixelPoint(110, 240), new PixelPoint(140, 242));
        assertThat(LegClaims.settled(List.of(front, behind))).containsExactly(front, behind);
    }

    @Test
    void peopleApartKeepTheirLegs() {
        PoseClaims.Claim one = claim(FRONT, new PixelPoint(110, 240), new PixelPoint(140, 242));
        PoseClaims.Claim other =
                claim(new ImageBox(400, 80, 50, 140), new PixelPoint(410, 210), new PixelPoint(440, 212));
        assertThat(LegClaims.settled(List.of(one, other))).containsExactly(one, other);
    }
}
