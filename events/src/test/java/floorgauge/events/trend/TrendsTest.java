package floorgauge.events.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.Unit;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TrendsTest {

    private static final LocalDate MONDAY = LocalDate.of(2026, 9, 7);

    @Test
    void nothingObservedGivesNothing() {
        assertThat(Trends.of(List.of())).isEmpty();
    }

    @Test
    void oneObservationHasACountAndNoInterval() {
        Trend trend = Trends.of(List.of(seen("Okoro", 0, "a", 0.4))).get(0);
        assertThat(trend.count()).isEqualTo(1);
        assertThat(trend.mean()).isEqualTo(0.4);
        assertThat(trend.shrunkMean()).isEqualTo(0.4);
        assertThat(trend.meanInterval()).isEmpty();
        assertThat(trend.slope()).isEmpty();
        assertThat(trend.direction()).isEqualTo(Trend.Direction.NONE);
    }

    @Test
    void oneDayHasNoSlope() {
        Trend trend = Trends.of(List.of(seen("Okoro", 3, "a", 0.4), seen("Okoro", 3, "b", 0.6)))
                .get(0);
        assertThat(trend.slope()).isEmpty();
        assertThat(trend.meanInterval()).isPresent();
    }

    @Test
    void equalValuesHaveNoTrendAndNoSpread() {
        List<TrendObservation> all = new ArrayList<>();
        for (int day = 0; day < 12; day++) {
            all.add(seen("Okoro", day, "p" + day, 0.5));
        }
        Trend trend = Trends.of(all).get(0);
        assertThat(trend.slope().orElseThrow().perWeek()).isZero();
        assertThat(trend.slope().orElseThrow().test().p()).isEqualTo(1);
        assertThat(trend.direction()).isEqualTo(Trend.Direction.NONE);
        assertThat(trend.meanInterval()).contains(new Interval(0.5, 0.5));
    }

    @Test
    void twoPossessionsOnTwoDaysAreTooFewForAnIntervalOfTheSlope() {
        Trend trend = Trends.of(List.of(seen("Okoro", 0, "a", 0.4), seen("Okoro", 7, "b", 0.6)))
                .get(0);
        assertThat(trend.slope().orElseThrow().perWeek()).isEqualTo(0.2, within(1e-12));
        assertThat(trend.slope().orElseThrow().interval()).isEmpty();
        assertThat(trend.direction()).isEqualTo(Trend.Direction.NONE);
    }

    @Test
    void aSteadyRiseIsCalledUpAndItsSlopeIsAWeeks() {
        List<TrendObservation> all = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(3);
        for (int day = 0; day < 40; day++) {
            all.add(seen("Okoro", day, "p" + day, 0.3 + 0.02 * day + 0.1 * (random.nextDouble() - 0.5)));
        }
        Trend trend = Trends.of(all).get(0);
        assertThat(trend.direction()).isEqualTo(Trend.Direction.UP);
        assertThat(trend.slope().orElseThrow().perWeek()).isEqualTo(0.14, within(0.01));
        assertThat(trend.slope().orElseThrow().interval().orElseThrow().holds(0.14))
                .isTrue();
    }

    /** With an interval of 90 % about one series in ten of pure noise is called a trend. */
    @Test
    void noiseIsCalledATrendNoOftenerThanTheIntervalAllows() {
        long seed = 41;
        SplittableRandom random = new SplittableRandom(seed);
        int called = 0;
        int trials = 400;
        for (int k = 0; k < trials; k++) {
            List<TrendObservation> all = new ArrayList<>();
            for (int day = 0; day < 25; day++) {
                all.add(seen("Okoro", day, "p" + day, random.nextDouble()));
            }
            called += Trends.of(all, new TrendSettings(0.9, 100, 1)).get(0).direction() == Trend.Direction.NONE ? 0 : 1;
        }
        assertThat(called / (double) trials).as("seed %d", seed).isLessThan(0.14);
    }

    @Test
    void aPlayerSeenOnceIsDrawnFurtherTowardTheTeamThanOneSeenOften() {
        List<TrendObservation> all = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(8);
        String[] names = {"Okoro", "Lind", "Sato", "Vega", "Marsh"};
        for (int player = 0; player < names.length; player++) {
            int possessions = player == 0 ? 2 : 30;
            for (int p = 0; p < possessions; p++) {
                all.add(seen(names[player], p, names[player] + p, 0.2 * player + random.nextDouble() - 0.5));
            }
        }
        List<Trend> trends = Trends.of(all);
        Trend seldom = trends.stream()
                .filter(t -> t.subject().who().contains("Okoro"))
                .findFirst()
                .orElseThrow();
        Trend often = trends.stream()
                .filter(t -> t.subject().who().contains("Marsh"))
                .findFirst()
                .orElseThrow();
        assertThat(drawn(seldom)).isGreaterThan(3 * drawn(often));
        assertThat(seldom.shrunkInterval().orElseThrow().holds(seldom.shrunkMean()))
                .isTrue();
    }

    private static double drawn(Trend trend) {
        return (trend.mean() - trend.shrunkMean()) / (trend.mean() - trend.teamMean());
    }

    @Test
    void theOrderOfObservationsChangesNothing() {
        List<TrendObservation> all = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(12);
        for (int k = 0; k < 60; k++) {
            all.add(seen(k % 3 == 0 ? "Okoro" : "Lind", k / 4, "p" + k / 2, random.nextDouble()));
        }
        List<TrendObservation> shuffled = new ArrayList<>(all);
        Collections.shuffle(shuffled, new Random(1));
        assertThat(Trends.of(shuffled)).isEqualTo(Trends.of(all));
    }

    @Test
    void countedSlopesAgreeWithSlopesWrittenOut() {
        long seed = 31;
        SplittableRandom random = new SplittableRandom(seed);
        for (int trial = 0; trial < 20; trial++) {
            int n = 5 + random.nextInt(60);
            double[] times =
                    random.ints(n, 0, 30).asDoubleStream().map(d -> d / 7).toArray();
            double[] values = random.doubles(n).toArray();
            TheilSen.PairSlopes counted = CountedPairSlopes.of(times, values);
            TheilSen.PairSlopes written = TheilSen.SortedPairSlopes.of(times, values);
            assertThat(counted.count()).isEqualTo(written.count());
            for (long rank = 0; rank < written.count(); rank += 7) {
                assertThat(counted.smallest(rank))
                        .as("seed %d, trial %d, rank %d", seed, trial, rank)
                        .isEqualTo(written.smallest(rank), within(1e-9));
            }
        }
    }

    @Test
    void valuesThatAreNoNumbersAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> seen("Okoro", 0, "a", Double.NaN));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new TrendObservation(subject("Okoro"), "a", MONDAY, 0, -1));
    }

    private static TrendObservation seen(String who, int day, String possession, double value) {
        return new TrendObservation(subject(who), possession, MONDAY.plusDays(day), value, 0.05);
    }

    private static TrendSubject subject(String who) {
        return new TrendSubject(List.of(who), Role.SCREENER, FindingKind.SCREEN, "separation gained", Unit.METRES);
    }
}
