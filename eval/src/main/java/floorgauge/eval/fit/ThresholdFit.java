package floorgauge.eval.fit;

import floorgauge.eval.events.EventMark;
import floorgauge.eval.events.EventMatches;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.eval.statistics.PairedDifference;
import floorgauge.eval.statistics.Ratios;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Fits settings so that the findings of one kind agree best with the labels: greatest F1 over all films, one setting after
 * the other over a ladder of values round the base, twice through. Of equal fits the one nearest the base is kept. The gain is
 * told by cross-validation by film.
 */
public final class ThresholdFit {

    /** Steps of the ladder, as multiples of the base value. */
    private static final double[] LADDER = {0.5, 0.65, 0.8, 0.9, 1, 1.1, 1.25, 1.5, 2};

    private static final int ROUNDS = 2;

    private final FindingKind kind;
    private final List<Setting> settings;
    private final Standards base;
    private final EventTolerance tolerance;
    private final Map<FitFilm, Map<Standards, Counts>> measured = new HashMap<>();

    /** Labels and findings of one film that agree and that do not. */
    private record Counts(long found, long falseAlarms, long missed) {

        static double f1(List<Counts> films) {
            long found = films.stream().mapToLong(Counts::found).sum();
            long falseAlarms = films.stream().mapToLong(Counts::falseAlarms).sum();
            long missed = films.stream().mapToLong(Counts::missed).sum();
            return Ratios.f1(found, falseAlarms, missed);
        }
    }

    private ThresholdFit(FindingKind kind, List<Setting> settings, Standards base, EventTolerance tolerance) {
        this.kind = kind;
        this.settings = settings;
        this.base = base;
        this.tolerance = tolerance;
    }

    /**
     * @param films labelled films
     * @param kind whose findings are to agree with the labels
     * @param settings what may be changed, at least one
     * @throws TooFewLabelsException where there are too few labels of the kind, or on too few films
     */
    public static FitResult fit(
            List<FitFilm> films,
            FindingKind kind,
            List<Setting> settings,
            Standards base,
            EventTolerance tolerance,
            ClipBootstrap bootstrap) {
        if (settings.isEmpty()) {
            throw new IllegalArgumentException("at least one setting to fit");
        }
        long labels = films.stream().mapToLong(f -> labels(f, kind)).sum();
        long labelled = films.stream().filter(f -> labels(f, kind) > 0).count();
        TooFewLabelsException.require(labels, "labels of a " + kind.words(), labelled);
        return new ThresholdFit(kind, settings, base, tolerance).crossValidated(films, bootstrap);
    }

    private static long labels(FitFilm film, FindingKind kind) {
        return film.labelled().labels().stream()
                .filter(l -> l.kind() == kind && !l.doubtful())
                .count();
    }

    private FitResult crossValidated(List<FitFilm> films, ClipBootstrap bootstrap) {
        List<ClipBootstrap.Pair<Counts>> heldOut = new ArrayList<>();
        for (int fold = 0; fold < Folds.count(films.size()); fold++) {
            Standards without = best(Folds.seen(films, fold));
            for (FitFilm film : Folds.heldOut(films, fold)) {
                heldOut.add(new ClipBootstrap.Pair<>(counts(film, base), counts(film, without)));
            }
        }
        PairedDifference gain = bootstrap.compare(heldOut, Counts::f1);
        return new FitResult(
                base,
                best(films),
                "F1 of " + kind.words(),
                Counts.f1(heldOut.stream().map(ClipBootstrap.Pair::first).toList()),
                Counts.f1(heldOut.stream().map(ClipBootstrap.Pair::second).toList()),
                gain);
    }

    private Standards best(List<FitFilm> films) {
        Standards best = base;
        double bestF1 = f1(films, base);
        for (int round = 0; round < ROUNDS; round++) {
            for (Setting setting : settings) {
                for (double value : ladder(setting)) {
                    Standards tried = best.with(setting, value);
                    double f1 = f1(films, tried);
                    if (f1 > bestF1 || (Double.isNaN(bestF1) && !Double.isNaN(f1))) {
                        best = tried;
                        bestF1 = f1;
                    }
                }
            }
        }
        return best;
    }

    /** Values within the setting's range, nearest the base first. */
    private List<Double> ladder(Setting setting) {
        double middle = base.of(setting);
        TreeSet<Double> values = new TreeSet<>();
        for (double step : LADDER) {
            values.add(Math.max(setting.least(), Math.min(setting.most(), middle * step)));
        }
        List<Double> nearestFirst = new ArrayList<>(values);
        nearestFirst.sort(java.util.Comparator.comparingDouble(v -> Math.abs(v - middle)));
        return nearestFirst;
    }

    private double f1(List<FitFilm> films, Standards standards) {
        return Counts.f1(films.stream().map(f -> counts(f, standards)).toList());
    }

    private Counts counts(FitFilm film, Standards standards) {
        return measured.computeIfAbsent(film, f -> new HashMap<>()).computeIfAbsent(standards, s -> measure(film, s));
    }

    private Counts measure(FitFilm film, Standards standards) {
        List<EventMark> findings = film.measure().apply(standards);
        EventMatches matches = film.labelled()
                .with(findings, film.labelled().identities())
                .only(kind)
                .match(tolerance);
        return new Counts(
                matches.pairs().size(),
                matches.falseAlarms().size(),
                matches.missed().size());
    }
}
