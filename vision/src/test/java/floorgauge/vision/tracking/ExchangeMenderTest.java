package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.floor.FloorPoint;
import floorgauge.vision.kit.KitLikelihood;
import floorgauge.vision.network.NumberBelief;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Two team-mates who meet, stop for a second and part: motion does not tell whether they passed or turned back. */
class ExchangeMenderTest {

    private static FloorPoint left(double t) {
        return new FloorPoint(7 - Math.max(0.03, Math.abs(t - 4) - 0.5), 0);
    }

    private static FloorPoint right(double t) {
        return new FloorPoint(7 + Math.max(0.03, Math.abs(t - 4) - 0.5), 0);
    }

    private static ExchangeMender mender() {
        return new ExchangeMender(
                TrackingSettings.defaults().motion(), KitLikelihood.PRIOR, new HeightLikelihood(0.05));
    }

    private static Tracklet track(boolean startsLeft, boolean endsLeft, double heightBefore, double heightAfter) {
        return TestSightings.walk(
                0,
                8,
                t -> (t < 4 ? startsLeft : endsLeft) ? left(t) : right(t),
                t -> TestSightings.WHITE,
                t -> t < 4 ? heightBefore : heightAfter);
    }

    @Test
    void nobodyNothing() {
        assertThat(mender().mended(List.of())).isEmpty();
    }

    @Test
    void thoseWhoNeverMeetStayAsTheyAre() {
        Tracklet one = TestSightings.walk(0, 4, t -> new FloorPoint(3, -5), t -> TestSightings.WHITE, t -> 1.8);
        Tracklet other = TestSightings.walk(0, 4, t -> new FloorPoint(3, 5), t -> TestSightings.WHITE, t -> 2.1);
        ExchangeMender mender = mender();
        assertThat(mender.mended(List.of(one, other))).containsExactly(one, other);
        assertThat(mender.doubts()).isEmpty();
    }

    @Test
    void anExchangeIsMendedByTheirHeights() {
        // The guard comes from the left and goes back there, but was given the centre's way out.
        Tracklet guard = track(true, false, 1.85, 2.08);
        Tracklet centre = track(false, true, 2.08, 1.85);
        List<Tracklet> mended = mender().mended(List.of(guard, centre));
        assertThat(heights(mended.get(0))).containsExactly(1.85);
        assertThat(heights(mended.get(1))).containsExactly(2.08);
    }

    @Test
    void tracksThatAreRightStayAndTwoAlikeAreInDoubt() {
        ExchangeMender sure = mender();
        List<Tracklet> kept = sure.mended(List.of(track(true, true, 1.85, 1.85), track(false, false, 2.08, 2.08)));
        assertThat(heights(kept.get(0))).containsExactly(1.85);
        ExchangeMender unsure = mender();
        unsure.mended(List.of(track(true, true, 1.9, 1.9), track(false, false, 1.9, 1.9)));
        assertThat(unsure.doubts()).hasSize(1);
        double doubt = unsure.doubts().get(0).probability();
        double trust =
                sure.doubts().stream().mapToDouble(Exchange::probability).max().orElse(0);
        assertThat(doubt).isBetween(0.01, 0.5).isGreaterThan(trust);
    }

    @Test
    void anExchangeOfTwoOfOneHeightIsMendedByTheirNumbers() {
        Tracklet four = numbered(track(true, false, 1.9, 1.9), 4, 23);
        Tracklet other = numbered(track(false, true, 1.9, 1.9), 23, 4);
        List<Tracklet> mended = mender().mended(List.of(four, other));
        assertThat(numbers(mended.get(0))).containsExactly(4);
        assertThat(numbers(mended.get(1))).containsExactly(23);
        Tracklet right = numbered(track(true, true, 1.9, 1.9), 4, 4);
        Tracklet alike = numbered(track(false, false, 1.9, 1.9), 23, 23);
        assertThat(mender().mended(List.of(right, alike))).containsExactly(right, alike);
    }

    /** One number read until the fourth second, another from then on, every 0.4 s and rather surely. */
    private static Tracklet numbered(Tracklet track, int before, int after) {
        List<Sighting> sightings = new ArrayList<>();
        for (int i = 0; i < track.sightings().size(); i++) {
            Sighting s = track.sightings().get(i);
            Optional<NumberBelief> belief = i % 5 == 0
                    ? Optional.of(TestSightings.belief(s.timeSeconds() < 4 ? before : after, 0.7))
                    : Optional.empty();
            sightings.add(
                    new Sighting(s.observation(), s.kit(), s.movingShare(), s.heightMetres(), belief, s.underHead()));
        }
        return new Tracklet(sightings);
    }

    private static java.util.Set<Integer> numbers(Tracklet track) {
        return track.numbers().stream().map(b -> b.of(4) > b.of(23) ? 4 : 23).collect(Collectors.toSet());
    }

    private static java.util.Set<Double> heights(Tracklet track) {
        return track.sightings().stream()
                .map(s -> s.heightMetres().orElseThrow())
                .collect(Collectors.toSet());
    }
}
