package floorgauge.eval.fit;

import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Fits everything that the labels suffice for, one kind of finding after the other, then the weights of screen quality where a
 * coach graded screens. Each fit starts from what the earlier ones settled on; what gains nothing beyond noise stays as it was.
 */
public final class StandardsFit {

    private final List<FitFilm> films;
    private final EventTolerance tolerance;
    private final ClipBootstrap bootstrap;
    private final Consumer<String> told;
    private final List<String> sentences = new ArrayList<>();
    private Standards standards;
    private Optional<TooFewLabelsException> refusal = Optional.empty();
    private boolean fitted;

    private StandardsFit(
            List<FitFilm> films,
            Standards base,
            EventTolerance tolerance,
            ClipBootstrap bootstrap,
            Consumer<String> told) {
        this.films = films;
        this.standards = base;
        this.tolerance = tolerance;
        this.bootstrap = bootstrap;
        this.told = told;
    }

    /**
     * Fits and tells as it goes: one sentence for each kind that has labels.
     *
     * @param told takes each sentence as soon as it stands
     * @throws TooFewLabelsException where the labels suffice for nothing
     */
    public static FittedStandards fit(
            List<FitFilm> films,
            Standards base,
            EventTolerance tolerance,
            ClipBootstrap bootstrap,
            Consumer<String> told) {
        StandardsFit fit = new StandardsFit(films, base, tolerance, bootstrap, told);
        FittableSettings.all().forEach(fit::fitKind);
        fit.fitWeights();
        if (!fit.fitted) {
            throw fit.refusal.orElseThrow();
        }
        return new FittedStandards(base, fit.standards, fit.sentences);
    }

    private void fitKind(FindingKind kind, List<Setting> settings) {
        try {
            take(ThresholdFit.fit(films, kind, settings, standards, tolerance, bootstrap));
        } catch (TooFewLabelsException e) {
            refuse(e);
        }
    }

    private void fitWeights() {
        List<List<GradedScreen>> graded = films.stream().map(this::graded).toList();
        try {
            take(WeightFit.fit(graded, standards, bootstrap));
        } catch (TooFewLabelsException e) {
            refuse(e);
        }
    }

    private List<GradedScreen> graded(FitFilm film) {
        boolean none = film.labelled().labels().stream().allMatch(l -> l.grade().isEmpty());
        return none
                ? List.of()
                : GradedScreen.of(film.labelled()
                        .with(film.measure().apply(standards), film.labelled().identities())
                        .only(FindingKind.SCREEN)
                        .match(tolerance));
    }

    private void take(FitResult result) {
        fitted = true;
        standards = result.recommended();
        tell(result.sentence());
    }

    /** Kinds without a label are passed over in silence; the refusal nearest to enough stands for all. */
    private void refuse(TooFewLabelsException e) {
        if (e.labels() > 0) {
            tell(e.getMessage());
        }
        if (refusal.isEmpty() || e.labels() > refusal.get().labels()) {
            refusal = Optional.of(e);
        }
    }

    private void tell(String sentence) {
        sentences.add(sentence);
        told.accept(sentence);
    }
}
