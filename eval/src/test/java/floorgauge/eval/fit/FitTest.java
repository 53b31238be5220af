package floorgauge.eval.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.failure.MendableException;
import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventMark;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.events.Identities;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.screen.QualityPart;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.standards.StandardsFile;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class FitTest {

    private static final ClipBootstrap BOOTSTRAP = new ClipBootstrap(400, 0.9, 1);
    private static final long SEED = 9;

    @Test
    void refusesTooFewLabelsWithASentence() {
        assertThatThrownBy(() -> fit(List.of()))
                .isInstanceOf(MendableException.class)
                .hasMessage("0 labels of a crowded floor on 0 films are too few to fit to: at least 20 on 5 films are "
                        + "needed; label more film, or keep the standards as they are");
        assertThatThrownBy(() -> fit(films(4, 10, 3.0)))
                .hasMessageContaining("40 labels of a crowded floor on 4 films");
        assertThatThrownBy(() -> fit(films(9, 2, 3.0))).hasMessageContaining("18 labels");
        assertThatThrownBy(() ->
                        WeightFit.fit(graded(1, 30, new double[] {1, 0, 0, 0, 0, 0}), Standards.defaults(), BOOTSTRAP))
                .hasMessageContaining("30 grades of screens on 1 film are too few");
    }

    @Test
    void refusesNothingToFit() {
        assertThatThrownBy(() -> ThresholdFit.fit(
                        films(6, 10, 3.0),
                        FindingKind.CROWDED_FLOOR,
                        List.of(),
                        Standards.defaults(),
                        EventTolerance.USUAL,
                        BOOTSTRAP))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** The annotator calls a floor crowded below 3.0 m; the default is 2.4 m, and the ladder's nearest steps are 2.64 and 3.0. */
    @Test
    void findsTheThresholdThatTheLabelsWereMadeWith() {
        FitResult result = fit(films(8, 12, 3.0));
        assertThat(result.fitted().of(Setting.SPACING_CROWDED_DISTANCE)).isCloseTo(3.0, Offset.offset(1e-9));
        assertThat(result.worthwhile()).isTrue();
        assertThat(result.gain().interval().low()).isPositive();
        assertThat(result.after()).isGreaterThan(result.before());
        assertThat(result.sentence()).startsWith("The fitted standards are better: on films held out, F1 of crowded");
        String file = result.standardsFile();
        assertThat(file).contains("crowded-distance: 3 m  # was 2.4; two attackers");
        assertThat(StandardsFile.read(file, "fitted.yaml", Standards.defaults()))
                .isEqualTo(result.fitted());
    }

    @Test
    void keepsTheStandardsWhereNothingIsGained() {
        FitResult result = fit(films(8, 12, 2.4));
        assertThat(result.worthwhile()).isFalse();
        assertThat(result.recommended()).isEqualTo(Standards.defaults());
        assertThat(result.fitted().of(Setting.SPACING_CROWDED_DISTANCE)).isEqualTo(2.4);
        assertThat(result.sentence()).startsWith("The standards are kept as they were");
        assertThat(result.standardsFile().lines()).hasSize(1);
    }

    @Test
    void findsTheWeightsThatTheGradesWereMadeWith() {
        double[] truth = {0.7, 0, 0, 0, 0, 0.3};
        FitResult result = WeightFit.fit(graded(10, 20, truth), Standards.defaults(), BOOTSTRAP);
        assertThat(result.fitted().of(Setting.SCREEN_WEIGHT_CONTACT))
                .as("seed %d", SEED)
                .isGreaterThan(0.5);
        assertThat(result.fitted().of(Setting.SCREEN_WEIGHT_BASE))
                .as("seed %d", SEED)
                .isLessThan(0.07);
        assertThat(result.worthwhile()).isTrue();
        double sum = 0;
        for (QualityPart part : QualityPart.values()) {
            sum += result.fitted().of(part.weight());
        }
        assertThat(sum).isCloseTo(1, Offset.offset(1e-3));
    }

    @Test
    void gradesThatFollowTheDefaultWeightsLeaveThemAlone() {
        double[] defaults = {0.30, 0.15, 0.10, 0.10, 0.10, 0.25};
        FitResult result = WeightFit.fit(graded(10, 20, defaults), Standards.defaults(), BOOTSTRAP);
        for (QualityPart part : QualityPart.values()) {
            assertThat(result.fitted().of(part.weight()))
                    .as(part + ", seed " + SEED)
                    .isCloseTo(part.weight().defaultValue(), Offset.offset(0.08));
        }
    }

    @Test
    void aGradeAndAPartAreNeeded() {
        assertThatThrownBy(() -> new GradedScreen(6, Map.of(QualityPart.SET, 1.0)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new GradedScreen(3, new EnumMap<>(QualityPart.class)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(new GradedScreen(3, Map.of(QualityPart.SET, 0.5)).quality(new double[] {1, 0, 0, 0, 0, 0}))
                .isNaN();
    }

    @Test
    void foldsHoldEachFilmOutOnce() {
        List<Integer> films = new ArrayList<>();
        for (int i = 0; i < 23; i++) {
            films.add(i);
        }
        List<Integer> heldOut = new ArrayList<>();
        for (int fold = 0; fold < Folds.count(23); fold++) {
            assertThat(Folds.seen(films, fold)).doesNotContainAnyElementsOf(Folds.heldOut(films, fold));
            heldOut.addAll(Folds.heldOut(films, fold));
        }
        assertThat(Folds.count(23)).isEqualTo(10);
        assertThat(heldOut).containsExactlyInAnyOrderElementsOf(films);
        assertThat(Folds.count(3)).isEqualTo(3);
    }

    private static FitResult fit(List<FitFilm> films) {
        return ThresholdFit.fit(
                films,
                FindingKind.CROWDED_FLOOR,
                List.of(Setting.SPACING_CROWDED_DISTANCE),
                Standards.defaults(),
                EventTolerance.USUAL,
                BOOTSTRAP);
    }

    /** Films with moments every 10 s at which two attackers stand 1.5 to 4 m apart; those below the limit are labelled. */
    private static List<FitFilm> films(int count, int crowdedEach, double limit) {
        Random random = new Random(SEED);
        List<FitFilm> films = new ArrayList<>();
        for (int f = 0; f < count; f++) {
            List<Double> distances = new ArrayList<>();
            int crowded = 0;
            while (crowded < crowdedEach) {
                double distance = 1.5 + 2.5 * random.nextDouble();
                distances.add(distance);
                crowded += distance < limit ? 1 : 0;
            }
            EventFilm labelled =
                    new EventFilm("film" + f, 1, marks(distances, limit), List.of(), List.of(), Identities.unknown());
            films.add(new FitFilm(labelled, s -> marks(distances, s.of(Setting.SPACING_CROWDED_DISTANCE))));
        }
        return films;
    }

    private static List<EventMark> marks(List<Double> distances, double limit) {
        List<EventMark> marks = new ArrayList<>();
        for (int i = 0; i < distances.size(); i++) {
            if (distances.get(i) < limit) {
                marks.add(new EventMark(
                        "m" + i,
                        FindingKind.CROWDED_FLOOR,
                        Optional.empty(),
                        10.0 * i,
                        10.0 * i,
                        10.0 * i + 2,
                        new TreeMap<>(),
                        new TreeMap<>(),
                        1,
                        OptionalInt.empty(),
                        Set.of()));
            }
        }
        return marks;
    }

    /** Screens with random parts, graded by the band of the quality under the true weights. */
    private static List<List<GradedScreen>> graded(int films, int each, double[] weights) {
        Random random = new Random(SEED);
        List<List<GradedScreen>> all = new ArrayList<>();
        for (int f = 0; f < films; f++) {
            List<GradedScreen> screens = new ArrayList<>();
            for (int i = 0; i < each; i++) {
                EnumMap<QualityPart, Double> parts = new EnumMap<>(QualityPart.class);
                for (QualityPart part : QualityPart.values()) {
                    parts.put(part, random.nextDouble());
                }
                double quality = new GradedScreen(1, parts).quality(weights);
                screens.add(new GradedScreen((int) Math.min(5, Math.floor(quality / 20) + 1), parts));
            }
            all.add(screens);
        }
        return all;
    }
}
