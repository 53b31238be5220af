package floorgauge.vision.number;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.track.JerseyReading;
import floorgauge.vision.network.NumberBelief;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TrackNumbersTest {

    /** Sure of a number to this degree; the rest is spread over the others, half of it on none. */
    private static NumberBelief sure(int number, double probability) {
        float[] p = new float[NumberBelief.NUMBERS + 1];
        double rest = 1 - probability;
        java.util.Arrays.fill(p, (float) (0.5 * rest / (NumberBelief.NUMBERS - 1)));
        p[number] = (float) probability;
        p[NumberBelief.NUMBERS] = (float) (0.5 * rest);
        return new NumberBelief(p);
    }

    private static NumberBelief nothing() {
        float[] p = new float[NumberBelief.NUMBERS + 1];
        p[NumberBelief.NUMBERS] = 1;
        return new NumberBelief(p);
    }

    @Test
    void noLooksNoNumber() {
        assertThat(TrackNumbers.agreed(List.of())).isEmpty();
    }

    @Test
    void looksAtWhichNothingIsLegibleAreNoNumber() {
        assertThat(TrackNumbers.agreed(Collections.nCopies(50, nothing()))).isEmpty();
    }

    @Test
    void oneLookAloneIsNotEnough() {
        assertThat(TrackNumbers.agreed(List.of(sure(23, 0.95)))).isEmpty();
    }

    @Test
    void looksThatAgreeAreSurerTheMoreTheyAre() {
        List<NumberBelief> looks = new ArrayList<>(Collections.nCopies(3, sure(23, 0.8)));
        JerseyReading three = TrackNumbers.agreed(looks).orElseThrow();
        looks.addAll(Collections.nCopies(3, sure(23, 0.8)));
        JerseyReading six = TrackNumbers.agreed(looks).orElseThrow();
        assertThat(three.number()).isEqualTo(23);
        assertThat(six.probability()).isGreaterThan(three.probability());
    }

    @Test
    void looksThatContradictEachOtherAreNoNumber() {
        List<NumberBelief> looks = new ArrayList<>(Collections.nCopies(4, sure(23, 0.8)));
        looks.addAll(Collections.nCopies(4, sure(28, 0.8)));
        assertThat(TrackNumbers.agreed(looks)).isEmpty();
    }

    @Test
    void aFewLooksAtSomeoneElseDoNotOutvoteTheMany() {
        List<NumberBelief> looks = new ArrayList<>(Collections.nCopies(8, sure(4, 0.8)));
        looks.addAll(Collections.nCopies(2, sure(15, 0.99)));
        assertThat(TrackNumbers.agreed(looks).map(JerseyReading::number)).contains(4);
    }

    @Test
    void theOrderOfLooksChangesNothingOfSubstance() {
        List<NumberBelief> looks = new ArrayList<>();
        for (int k = 0; k < 12; k++) {
            looks.add(k % 4 == 3 ? nothing() : sure(31, 0.5 + 0.03 * k));
        }
        Optional<JerseyReading> straight = TrackNumbers.agreed(looks);
        Collections.shuffle(looks, new Random(7));
        JerseyReading shuffled = TrackNumbers.agreed(looks).orElseThrow();
        assertThat(shuffled.number()).isEqualTo(straight.orElseThrow().number());
        assertThat(shuffled.probability())
                .isCloseTo(straight.orElseThrow().probability(), org.assertj.core.api.Assertions.within(1e-9));
    }

    @Test
    void nothingLegibleSaysNothingOnWhoItIs() {
        assertThat(logRatio(List.of(), Collections.nCopies(9, sure(7, 0.9)))).isCloseTo(0, within(1e-9));
        assertThat(logRatio(Collections.nCopies(9, nothing()), Collections.nCopies(9, sure(7, 0.9))))
                .isCloseTo(0, within(1e-9));
    }

    /** A number in a hundred that both wear is worth ln 100 = 4.6 nats against two people, less what either may be wrong. */
    @Test
    void oneNumberTwiceIsOnePersonAndTwoNumbersAreTwo() {
        List<NumberBelief> seven = Collections.nCopies(9, sure(7, 0.9));
        List<NumberBelief> eight = Collections.nCopies(9, sure(8, 0.9));
        double same = logRatio(seven, seven);
        double different = logRatio(seven, eight);
        assertThat(same).isBetween(3.5, Math.log(100));
        assertThat(different).isBetween(-3.0, -1.0);
        assertThat(logRatio(eight, seven)).isEqualTo(different);
    }

    private static double logRatio(List<NumberBelief> one, List<NumberBelief> other) {
        return TrackNumbers.Shares.of(one).logRatio(TrackNumbers.Shares.of(other));
    }
}
