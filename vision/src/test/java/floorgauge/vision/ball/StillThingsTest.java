package floorgauge.vision.ball;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.floor.PixelPoint;
import floorgauge.vision.network.BallSighting;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class StillThingsTest {

    private static final BallSighting RIM = new BallSighting(new PixelPoint(870, 200), 4, 0.5);

    @Test
    void aRimIsNoBallAndADribbledBallStays() {
        List<BallLook> looks = looks(100, 0.07, 9);
        List<BallLook> left = StillThings.without(looks);
        assertThat(left).hasSameSizeAs(looks);
        for (int i = 0; i < left.size(); i++) {
            assertThat(left.get(i).frame()).isEqualTo(looks.get(i).frame());
            assertThat(left.get(i).seen()).containsExactly(looks.get(i).seen().get(1));
        }
    }

    @Test
    void aFilmOfTwoSecondsTellsNothing() {
        List<BallLook> looks = looks(28, 0.07, 9);
        assertThat(StillThings.without(looks)).isEqualTo(looks);
    }

    @Test
    void aBallThatIsHeldStillForTwoSecondsStays() {
        List<BallLook> looks = new ArrayList<>(looks(50, 0.07, 9));
        for (int i = 50; i < 80; i++) {
            looks.add(new BallLook(i, i * 0.07, List.of(RIM, new BallSighting(new PixelPoint(400, 500), 8, 0.7))));
        }
        for (BallLook look : StillThings.without(looks)) {
            assertThat(look.seen()).hasSize(1).doesNotContain(RIM);
        }
    }

    @Test
    void nothingIsLeftOfNothing() {
        assertThat(StillThings.without(List.of())).isEmpty();
    }

    /** The rim in every look, and a ball that goes up and down beside someone who walks. */
    private static List<BallLook> looks(int count, double step, double radius) {
        List<BallLook> looks = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            PixelPoint ball = new PixelPoint(300 + 2 * i, 400 + 40 * Math.abs(Math.sin(i * 0.7)));
            looks.add(new BallLook(i, i * step, List.of(RIM, new BallSighting(ball, radius, 0.6))));
        }
        return looks;
    }
}
