package floorgauge.vision.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.track.Team;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

class KitColourTest {

    static KitColour kit(Random random, double l, double a, double b) {
        KitColour.Sampler sampler = new KitColour.Sampler();
        for (int i = 0; i < 300; i++) {
            sampler.add(l + 8 * random.nextGaussian(), a + 5 * random.nextGaussian(), b + 5 * random.nextGaussian());
        }
        return sampler.kit();
    }

    @Test
    void noPixelsNoKit() {
        assertThatThrownBy(() -> new KitColour.Sampler().kit()).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> KitColour.mean(List.of())).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void distanceIsZeroToItselfAndOneToNothingInCommon() {
        KitColour.Sampler black = new KitColour.Sampler();
        black.add(0, 0, 0);
        KitColour.Sampler yellow = new KitColour.Sampler();
        yellow.add(90, -12, 80);
        assertThat(black.kit().distanceTo(black.kit())).isCloseTo(0, within(1e-6));
        assertThat(black.kit().distanceTo(yellow.kit())).isCloseTo(1, within(1e-6));
    }

    @Test
    void coloursBeyondTheBinsAreHeldAtTheirEdge() {
        KitColour.Sampler sampler = new KitColour.Sampler();
        sampler.add(100, 128, -128);
        assertThat(sampler.kit().meanLab()).containsExactly(new double[] {87, 60, -60}, within(0.5));
    }

    /** OpenCV's conversion of sRGB 150, 150, 150 gives L* 62. */
    @Test
    void meanColourAsRgb() {
        KitColour.Sampler grey = new KitColour.Sampler();
        grey.add(62, 0, 0);
        assertThat(grey.kit().meanRgb()).isEqualTo(0x969696);
    }

    @Test
    void oneKitTwiceIsNearerThanTwoKits() {
        Random random = new Random(3);
        KitColour red = kit(random, 45, 45, 30);
        KitColour redAgain = kit(random, 45, 45, 30);
        KitColour blue = kit(random, 35, 10, -45);
        assertThat(red.distanceTo(redAgain)).isLessThan(0.15);
        assertThat(red.distanceTo(blue)).isGreaterThan(0.8);
    }

    @Test
    void likelihoodLearnedFromApartPairsIsSteepAndFromMixedPairsFlat() {
        Random random = new Random(4);
        List<Double> near = new ArrayList<>();
        List<Double> far = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            near.add(Math.abs(0.15 + 0.05 * random.nextGaussian()));
            far.add(Math.min(1, 0.7 + 0.1 * random.nextGaussian()));
        }
        KitLikelihood apart = KitLikelihood.fit(near, far);
        KitLikelihood mixed = KitLikelihood.fit(near, near);
        assertThat(apart.intercept()).isGreaterThan(2);
        assertThat(apart.slope()).isLessThan(-5);
        assertThat(Math.abs(mixed.intercept() + mixed.slope() * 0.15)).isLessThan(0.5);
        assertThat(KitLikelihood.fit(List.of(), far)).isEqualTo(KitLikelihood.PRIOR);
    }

    @Test
    void twoKitsAndAnOfficialAreToldApart() {
        Random random = new Random(5);
        List<Optional<KitColour>> kits = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            kits.add(Optional.of(kit(random, 85, 0, 2)));
            kits.add(Optional.of(kit(random, 30, 20, -50)));
        }
        kits.add(Optional.of(kit(random, 55, 0, 70)));
        kits.add(Optional.empty());
        double[] weights = new double[kits.size()];
        java.util.Arrays.fill(weights, 100);
        List<TeamSorter.Membership> teams =
                TeamSorter.sort(kits, weights, OptionalInt.empty()).memberships();
        for (int i = 0; i < 10; i++) {
            assertThat(teams.get(i).team()).isEqualTo(i % 2 == 0 ? Team.FIRST : Team.SECOND);
            assertThat(teams.get(i).probability()).isGreaterThan(0.9);
        }
        assertThat(teams.get(10).team()).isEqualTo(Team.UNKNOWN);
        assertThat(teams.get(11)).isEqualTo(new TeamSorter.Membership(Team.UNKNOWN, 0));
    }

    @Test
    void oneTrackHasNoTeam() {
        List<Optional<KitColour>> one = List.of(Optional.of(kit(new Random(6), 50, 0, 0)));
        assertThat(TeamSorter.sort(one, new double[] {1}, OptionalInt.empty())
                        .memberships()
                        .get(0)
                        .team())
                .isEqualTo(Team.UNKNOWN);
    }
}
