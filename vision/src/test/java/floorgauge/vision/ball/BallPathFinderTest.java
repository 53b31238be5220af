package floorgauge.vision.ball;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.floor.PixelPoint;
import floorgauge.vision.network.BallSighting;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BallPathFinderTest {

    private static final long SEED = 5;

    private static BallSighting at(double x, double y, double score) {
        return new BallSighting(new PixelPoint(x, y), 8, score);
    }

    private static BallLook look(int k, BallSighting... seen) {
        return new BallLook(2L * k, k / 15.0, List.of(seen));
    }

    @Test
    void nothingSeenIsNoWay() {
        assertThat(BallPathFinder.find(List.of())).isEmpty();
        assertThat(BallPathFinder.find(List.of(look(0), look(1)))).isEmpty();
    }

    @Test
    void doubtfulSightingsAloneAreNoBall() {
        assertThat(BallPathFinder.find(List.of(look(0, at(10, 10, 0.15)), look(1, at(12, 10, 0.15)))))
                .isEmpty();
    }

    @Test
    void aSteadyBallIsFoundAmongScatteredSurerSightings() {
        Random random = new Random(SEED);
        List<BallLook> looks = new ArrayList<>();
        for (int k = 0; k < 30; k++) {
            BallSighting clutter = at(random.nextDouble() * 1280, random.nextDouble() * 720, 0.7);
            looks.add(look(k, clutter, at(200 + 12 * k, 300, 0.6)));
        }
        List<BallPoint> path = BallPathFinder.find(looks);
        assertThat(path).as("seed " + SEED).hasSize(30);
        assertThat(path).allSatisfy(p -> assertThat(p.sighting().centre().y()).isEqualTo(300));
    }

    @Test
    void anAbsenceIsBridged() {
        List<BallLook> looks = new ArrayList<>();
        for (int k = 0; k < 30; k++) {
            looks.add(k >= 10 && k < 18 ? look(k) : look(k, at(200 + 4 * k, 300, 0.8)));
        }
        assertThat(BallPathFinder.find(looks)).hasSize(22);
    }

    @Test
    void noBallCrossesThePictureInATick() {
        List<BallPoint> path = BallPathFinder.find(List.of(
                look(0, at(100, 100, 0.9)),
                look(1, at(1200, 100, 0.9)),
                look(2, at(101, 100, 0.9)),
                look(3, at(102, 100, 0.9))));
        assertThat(path).extracting(p -> p.look()).containsExactly(0, 2, 3);
    }
}
