package floorgauge.eval.benchmark;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.Unit;
import floorgauge.events.trend.Trend;
import floorgauge.events.trend.TrendObservation;
import floorgauge.events.trend.TrendSubject;
import floorgauge.events.trend.Trends;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** A season's trends: ten players, one figure, twenty practices of ten possessions. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class TrendsBenchmark {

    private static final int PLAYERS = 10;
    private static final int PRACTICES = 20;
    private static final int POSSESSIONS = 10;
    private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

    private final List<TrendObservation> season = season();

    private static List<TrendObservation> season() {
        SplittableRandom random = new SplittableRandom(5);
        List<TrendObservation> all = new ArrayList<>();
        for (int player = 1; player <= PLAYERS; player++) {
            TrendSubject subject = new TrendSubject(
                    List.of("player " + player), Role.SCREENER, FindingKind.SCREEN, "gap", Unit.METRES);
            for (int practice = 0; practice < PRACTICES; practice++) {
                for (int possession = 0; possession < POSSESSIONS; possession++) {
                    all.add(new TrendObservation(
                            subject,
                            practice + "/" + possession,
                            FIRST.plusDays(3L * practice),
                            random.nextDouble(),
                            0.1));
                }
            }
        }
        return all;
    }

    /** Theil and Sen's slope looks at every pair of a player's values once. */
    @Benchmark
    @Floor(work = "trends of 10 players, 200 values each", operations = 10 * (200 * 199 / 2) * 4, bytes = 10 * 200 * 16)
    public List<Trend> season200() {
        return Trends.of(season);
    }
}
