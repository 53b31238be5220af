package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.track.ImageBox;
import floorgauge.vision.network.Detection;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BetweenDetectionsTest {

    private static final double SECONDS = 0.16;

    private static Detection person(double left, double score) {
        return new Detection(new ImageBox(left, 100, 50, 120), score);
    }

    private static Optional<List<Detection>> between(List<Detection> before, List<Detection> after) {
        return BetweenDetections.of(before, after, SECONDS, 0.5, 0.4);
    }

    @Test
    void nobodyBeforeAndAfterIsNobodyBetween() {
        assertThat(between(List.of(), List.of())).contains(List.of());
    }

    @Test
    void whoRunsIsHalfWay() {
        // 60 pixels in 0.16 s are half a height, 5.8 m/s.
        List<Detection> found =
                between(List.of(person(100, 0.9)), List.of(person(160, 0.7))).orElseThrow();
        assertThat(found).hasSize(1);
        assertThat(found.get(0).box().left()).isCloseTo(130, within(1e-9));
        assertThat(found.get(0).score()).isEqualTo(0.7);
    }

    @Test
    void theShareOfTheTimeIsTheShareOfTheWay() {
        Detection found = BetweenDetections.of(List.of(person(100, 0.9)), List.of(person(140, 0.9)), SECONDS, 0.25, 0.4)
                .orElseThrow()
                .get(0);
        assertThat(found.box().left()).isCloseTo(110, within(1e-9));
    }

    @Test
    void whoCameOrWentMustBeLookedFor() {
        assertThat(between(List.of(person(100, 0.9)), List.of())).isEmpty();
        assertThat(between(List.of(), List.of(person(100, 0.9)))).isEmpty();
    }

    @Test
    void aFaintGuessThatIsNotFoundAgainIsNotMissed() {
        assertThat(between(List.of(person(100, 0.9), person(400, 0.3)), List.of(person(104, 0.9))))
                .get()
                .satisfies(found -> assertThat(found).hasSize(1));
    }

    @Test
    void nobodyRunsAcrossTheFloorInASixthOfASecond() {
        assertThat(between(List.of(person(100, 0.9)), List.of(person(300, 0.9))))
                .isEmpty();
    }

    @Test
    void twoWhoCouldHaveChangedPlacesMustBeLookedFor() {
        assertThat(between(List.of(person(100, 0.9), person(130, 0.9)), List.of(person(114, 0.9), person(116, 0.9))))
                .isEmpty();
    }

    @Test
    void twoWhoWalkSideBySideArePlain() {
        List<Detection> found = between(
                        List.of(person(100, 0.9), person(150, 0.8)), List.of(person(110, 0.9), person(160, 0.8)))
                .orElseThrow();
        assertThat(found.stream().map(d -> d.box().left())).containsExactly(105.0, 155.0);
    }
}
