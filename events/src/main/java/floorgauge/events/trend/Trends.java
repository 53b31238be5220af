package floorgauge.events.trend;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Follows figures over the weeks: observations in, a {@link Trend} for each subject out. */
public final class Trends {

    private static final double DAYS_A_WEEK = 7;

    private Trends() {}

    /** With the usual settings. */
    public static List<Trend> of(Collection<TrendObservation> observations) {
        return of(observations, TrendSettings.usual());
    }

    /**
     * One trend a subject, in the order of subjects; empty where nothing was observed. The team's mean is that of the subjects
     * given, so that a caller who asks for one player hands in the whole team. The order of the observations changes nothing.
     */
    public static List<Trend> of(Collection<TrendObservation> observations, TrendSettings settings) {
        Map<TrendSubject, List<Series>> groups = new TreeMap<>();
        Map<TrendSubject, List<TrendObservation>> bySubject = new TreeMap<>();
        observations.stream()
                .sorted()
                .forEach(o -> bySubject
                        .computeIfAbsent(o.subject(), s -> new ArrayList<>())
                        .add(o));
        bySubject.forEach((subject, own) ->
                groups.computeIfAbsent(subject.group(), g -> new ArrayList<>()).add(Series.of(subject, own)));
        List<Trend> trends = new ArrayList<>();
        groups.values().forEach(group -> trends.addAll(ofGroup(group, settings)));
        trends.sort((a, b) -> a.subject().compareTo(b.subject()));
        return List.copyOf(trends);
    }

    private static List<Trend> ofGroup(List<Series> group, TrendSettings settings) {
        Optional<Double> variance = possessionVariance(group);
        double[] means = group.stream().mapToDouble(Series::mean).toArray();
        double[] variances = group.stream()
                .mapToDouble(s -> variance.orElse(1.0) / s.possessions().size())
                .toArray();
        EmpiricalBayes shrunk = EmpiricalBayes.shrink(means, variances);
        double z = Quantile.normal((1 + settings.confidence()) / 2);
        List<Trend> trends = new ArrayList<>();
        for (int i = 0; i < group.size(); i++) {
            Series series = group.get(i);
            double mean = variance.isPresent() ? shrunk.means()[i] : means[i];
            double reach = z * shrunk.errors()[i];
            trends.add(new Trend(
                    series.subject(),
                    series.count(),
                    series.possessions().size(),
                    series.firstDay(),
                    series.lastDay(),
                    means[i],
                    PossessionBootstrap.interval(series.values(), settings),
                    mean,
                    variance.map(v -> new Interval(mean - reach, mean + reach)),
                    shrunk.teamMean(),
                    slope(series, settings)));
        }
        return trends;
    }

    /**
     * How much the means of possessions vary about their player's mean, pooled over the group and at least what their standard
     * errors make of it; empty where no player has two possessions, or nothing varies.
     */
    private static Optional<Double> possessionVariance(List<Series> group) {
        double squares = 0;
        double freedom = 0;
        double errors = 0;
        double count = 0;
        for (Series series : group) {
            double centre = series.possessions().stream()
                    .mapToDouble(Possession::mean)
                    .average()
                    .orElseThrow();
            freedom += series.possessions().size() - 1;
            for (Possession possession : series.possessions()) {
                squares += Math.pow(possession.mean() - centre, 2);
                errors += possession.errorVariance();
                count++;
            }
        }
        double variance = freedom > 0 ? Math.max(squares / freedom, errors / count) : 0;
        return variance > 0 ? Optional.of(variance) : Optional.empty();
    }

    /** From the means of possessions, since values of one possession are not independent. */
    private static Optional<Slope> slope(Series series, TrendSettings settings) {
        if (series.firstDay().equals(series.lastDay())) {
            return Optional.empty();
        }
        double[] weeks = series.possessions().stream()
                .mapToDouble(p -> (p.day().toEpochDay() - series.firstDay().toEpochDay()) / DAYS_A_WEEK)
                .toArray();
        double[] means =
                series.possessions().stream().mapToDouble(Possession::mean).toArray();
        TheilSen slope = TheilSen.of(weeks, means, settings.confidence());
        return Optional.of(new Slope(slope.slope(), slope.interval(), MannKendall.of(weeks, means)));
    }

    /** The values of one subject in one possession. */
    private record Possession(LocalDate day, double[] values, double errorVariance) {

        double mean() {
            return Arrays.stream(values).average().orElseThrow();
        }
    }

    /** All of one subject. */
    private record Series(TrendSubject subject, List<Possession> possessions) {

        static Series of(TrendSubject subject, List<TrendObservation> sorted) {
            Map<String, List<TrendObservation>> byPossession = new TreeMap<>();
            sorted.forEach(o -> byPossession
                    .computeIfAbsent(o.day() + " " + o.possession(), p -> new ArrayList<>())
                    .add(o));
            return new Series(
                    subject,
                    byPossession.values().stream().map(Series::possession).toList());
        }

        private static Possession possession(List<TrendObservation> own) {
            double n = own.size();
            double errors = own.stream()
                            .mapToDouble(o -> o.standardError() * o.standardError())
                            .sum()
                    / (n * n);
            return new Possession(
                    own.get(0).day(),
                    own.stream().mapToDouble(TrendObservation::value).toArray(),
                    errors);
        }

        int count() {
            return possessions.stream().mapToInt(p -> p.values().length).sum();
        }

        double mean() {
            return possessions.stream()
                            .mapToDouble(p -> Arrays.stream(p.values()).sum())
                            .sum()
                    / count();
        }

        List<double[]> values() {
            return possessions.stream().map(Possession::values).toList();
        }

        LocalDate firstDay() {
            return possessions.get(0).day();
        }

        LocalDate lastDay() {
            return possessions.get(possessions.size() - 1).day();
        }
    }
}
