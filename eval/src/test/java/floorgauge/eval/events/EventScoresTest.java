package floorgauge.eval.events;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.UnclearSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class EventScoresTest {

    private static final Offset<Double> EXACT = Offset.offset(1e-9);
    private static final EventMatcher BY_ROLE = new EventMatcher(EventTolerance.USUAL, Optional.of(Identities.same()));
    private static final EventMatcher BY_TIME = new EventMatcher(EventTolerance.USUAL, Identities.unknown());

    @Test
    void nothingLabelledAndNothingFound() {
        EventScores scores = EventScores.of(List.of());
        assertThat(scores.precision()).isNaN();
        assertThat(scores.recall()).isNaN();
        assertThat(scores.f1()).isNaN();
        assertThat(scores.onset().count()).isZero();
        assertThat(scores.figures()).isEmpty();
        assertThat(scores.labelAccuracy()).isNaN();
        assertThat(scores.roleAccuracy()).isNaN();
    }

    @Test
    void emptyTruthAndEmptyResult() {
        EventScores onlyFalse = scores(BY_TIME.match(List.of(), List.of(screen("r", 3)), List.of()));
        assertThat(onlyFalse.falseAlarms()).isEqualTo(1);
        assertThat(onlyFalse.precision()).isZero();
        assertThat(onlyFalse.recall()).isNaN();
        EventScores onlyMissed = scores(BY_TIME.match(List.of(screen("l", 3)), List.of(), List.of()));
        assertThat(onlyMissed.missed()).isEqualTo(1);
        assertThat(onlyMissed.recall()).isZero();
        assertThat(onlyMissed.f1()).isZero();
    }

    @Test
    void theEdgeOfTheToleranceOnBothSides() {
        assertThat(scores(BY_TIME.match(List.of(screen("l", 3)), List.of(screen("r", 4)), List.of()))
                        .found())
                .isEqualTo(1);
        assertThat(scores(BY_TIME.match(List.of(screen("l", 4)), List.of(screen("r", 3)), List.of()))
                        .found())
                .isEqualTo(1);
        assertThat(scores(BY_TIME.match(List.of(screen("l", 3)), List.of(screen("r", 4.01)), List.of()))
                        .found())
                .isZero();
        assertThat(scores(BY_TIME.match(List.of(screen("l", 4.01)), List.of(screen("r", 3)), List.of()))
                        .found())
                .isZero();
    }

    @Test
    void anotherKindIsAnotherEvent() {
        EventMark flag = mark("r", FindingKind.WEAK_SCREEN, 3, roles());
        EventMatches matches = BY_TIME.match(List.of(screen("l", 3)), List.of(flag), List.of());
        assertThat(matches.pairs()).isEmpty();
        assertThat(matches.missed()).hasSize(1);
        assertThat(matches.falseAlarms()).hasSize(1);
    }

    /** Labels at 0 and 1, findings at 1.9 and 0.9: the nearest pair alone (1, 0.9) would leave both others without. */
    @Test
    void asManyPairsAsCanBeMade() {
        EventMatches matches = BY_TIME.match(
                List.of(screen("a", 0), screen("b", 1)), List.of(screen("x", 1.9), screen("y", 0.9)), List.of());
        assertThat(matches.pairs()).hasSize(2);
        assertThat(matches.pairs().get(0).result().id()).isEqualTo("y");
        assertThat(matches.pairs().get(1).result().id()).isEqualTo("x");
        assertThat(matches.pairs().get(0).momentErrorSeconds()).isCloseTo(0.9, EXACT);
    }

    @Test
    void rolesDecideBetweenTwoAtOneTime() {
        EventMark labelled = mark("l", FindingKind.SCREEN, 3, roles(Role.SCREENER, 4, Role.USER, 5));
        EventMark other = mark("x", FindingKind.SCREEN, 3, roles(Role.SCREENER, 1, Role.USER, 2));
        EventMark same = mark("y", FindingKind.SCREEN, 3.5, roles(Role.SCREENER, 4, Role.USER, 5));
        EventMatches matches = BY_ROLE.match(List.of(labelled), List.of(other, same), List.of());
        assertThat(matches.pairs()).hasSize(1);
        assertThat(matches.pairs().get(0).result().id()).isEqualTo("y");
        assertThat(matches.falseAlarms()).extracting(EventMark::id).containsExactly("x");
    }

    @Test
    void halfOfTheRolesIsEnoughAndLessIsNot() {
        EventMark labelled =
                mark("l", FindingKind.SCREEN, 3, roles(Role.SCREENER, 4, Role.USER, 5, Role.USER_DEFENDER, 8));
        EventMark twoOfThree =
                mark("r", FindingKind.SCREEN, 3, roles(Role.SCREENER, 4, Role.USER, 5, Role.USER_DEFENDER, 9));
        EventMark oneOfThree =
                mark("r", FindingKind.SCREEN, 3, roles(Role.SCREENER, 4, Role.USER, 6, Role.USER_DEFENDER, 9));
        EventMark oneOfTwo = mark("r", FindingKind.SCREEN, 3, roles(Role.SCREENER, 4, Role.USER, 6));
        EventScores scores = scores(BY_ROLE.match(List.of(labelled), List.of(twoOfThree), List.of()));
        assertThat(scores.found()).isEqualTo(1);
        assertThat(scores.rolesCompared()).isEqualTo(3);
        assertThat(scores.roleAccuracy()).isCloseTo(2.0 / 3, EXACT);
        assertThat(scores(BY_ROLE.match(List.of(labelled), List.of(oneOfThree), List.of()))
                        .found())
                .isZero();
        assertThat(scores(BY_ROLE.match(List.of(labelled), List.of(oneOfTwo), List.of()))
                        .found())
                .isEqualTo(1);
        assertThat(scores(BY_TIME.match(List.of(labelled), List.of(oneOfThree), List.of()))
                        .found())
                .isEqualTo(1);
    }

    @Test
    void aTrackThatStandsForNobodyIsAStranger() {
        EventMatcher matcher = new EventMatcher(
                EventTolerance.USUAL,
                Optional.of((track, time) -> track == 7 ? OptionalInt.of(4) : OptionalInt.empty()));
        EventMark labelled = mark("l", FindingKind.CUT, 3, roles(Role.CUTTER, 4));
        assertThat(matcher.match(
                                List.of(labelled),
                                List.of(mark("r", FindingKind.CUT, 3, roles(Role.CUTTER, 7))),
                                List.of())
                        .pairs())
                .hasSize(1);
        assertThat(matcher.match(
                                List.of(labelled),
                                List.of(mark("r", FindingKind.CUT, 3, roles(Role.CUTTER, 4))),
                                List.of())
                        .pairs())
                .isEmpty();
    }

    /** An unclear span ends where it says: its own ends are inside, what lies beyond is not let off. */
    @Test
    void anUnclearSpanHoldsItsEndsAndNoMore() {
        List<UnclearSpan> unclear = List.of(new UnclearSpan(19, 21, "out of the picture"));
        assertThat(BY_TIME.match(List.of(), List.of(screen("a", 19), screen("b", 21)), unclear)
                        .falseAlarms())
                .isEmpty();
        assertThat(BY_TIME.match(List.of(), List.of(screen("a", 18.9), screen("b", 21.1)), unclear)
                        .falseAlarms())
                .extracting(EventMark::id)
                .containsExactly("a", "b");
    }

    /** Nearness falls with time on both sides of the label. */
    @Test
    void ofTwoFindingsTheNearerInTimeStandsForTheLabel() {
        for (double sign : new double[] {-1, 1}) {
            EventMatches matches = BY_TIME.match(
                    List.of(screen("label", 10)),
                    List.of(screen("far", 10 + sign * 0.8), screen("near", 10 - sign * 0.3)),
                    List.of());
            assertThat(matches.pairs()).extracting(p -> p.result().id()).containsExactly("near");
        }
    }

    @Test
    void doubtfulLabelsAndUnclearSpansLetFindingsOff() {
        EventMark doubtful = cantTell(screen("l", 3), LabelledEvent.EXISTENCE);
        EventMatches matches = BY_TIME.match(
                List.of(doubtful, screen("m", 20)),
                List.of(screen("x", 3.2), screen("y", 20.5)),
                List.of(new UnclearSpan(19, 21, "out of the picture")));
        assertThat(matches.pairs()).isEmpty();
        assertThat(matches.missed()).isEmpty();
        assertThat(matches.falseAlarms()).isEmpty();
    }

    @Test
    void aCertainLabelComesBeforeADoubtfulOne() {
        EventMark doubtful = cantTell(screen("d", 3), LabelledEvent.EXISTENCE);
        EventMatches matches = BY_TIME.match(List.of(doubtful, screen("c", 3.5)), List.of(screen("x", 3)), List.of());
        assertThat(matches.pairs()).hasSize(1);
        assertThat(matches.missed()).isEmpty();
    }

    @Test
    void figuresAndLabelsAreComparedWhereBothTellThem() {
        EventMark labelled = with(screen("l", 3), Optional.of("down screen"), Map.of("gap", 0.4, "delay", 1.0));
        EventMark found = with(screen("r", 3), Optional.of("flare screen"), Map.of("gap", 0.5, "quality", 60.0));
        EventMark untold = cantTell(with(screen("m", 9), Optional.of("down screen"), Map.of("gap", 0.1)), "gap");
        EventMark foundToo = with(screen("s", 9), Optional.of("down screen"), Map.of("gap", 0.9));
        EventScores scores = scores(BY_TIME.match(List.of(labelled, untold), List.of(found, foundToo), List.of()));
        assertThat(scores.figures().keySet()).containsExactly("gap");
        assertThat(scores.figures().get("gap").count()).isEqualTo(1);
        assertThat(scores.figures().get("gap").bias()).isCloseTo(0.1, EXACT);
        assertThat(scores.labelsCompared()).isEqualTo(2);
        assertThat(scores.labelAccuracy()).isEqualTo(0.5);
    }

    @Test
    void theCurveRisesWithTheTolerance() {
        EventFilm film = film(List.of(screen("a", 5), screen("b", 9)), List.of(screen("x", 5.25), screen("y", 10.9)));
        ToleranceCurve curve = ToleranceCurve.of(List.of(film), EventTolerance.USUAL);
        assertThat(curve.points())
                .extracting(ToleranceCurve.Point::recall)
                .containsExactly(0.0, 0.0, 0.5, 0.5, 0.5, 0.5, 0.5, 1.0);
        assertThat(curve.points().get(7).precision()).isEqualTo(1);
        assertThat(curve.points().get(2).f1()).isEqualTo(0.5);
    }

    @Test
    void flagsPerHourAndTheirCurve() {
        EventFilm film = film(
                List.of(screen("a", 5), screen("b", 50)),
                List.of(probability(screen("x", 5), 0.9), probability(screen("y", 30), 0.7)));
        FlagScores flags = FlagScores.of(List.of(film, film), EventTolerance.USUAL);
        // Two films of a tenth of an hour with one false flag each.
        assertThat(flags.falsePerHour()).isCloseTo(10, EXACT);
        assertThat(flags.curve().positives()).isEqualTo(4);
        assertThat(flags.curve().averagePrecision()).isCloseTo(0.5, EXACT);
        assertThat(flags.reliability().bins().get(9).realShare()).isEqualTo(1);
        assertThat(flags.reliability().bins().get(7).realShare()).isZero();
        assertThat(FlagScores.of(List.of(), EventTolerance.USUAL).falsePerHour())
                .isNaN();
    }

    @Test
    void gradesOfNothing() {
        GradeAgreement none = GradeAgreement.of(List.of(), ClipBootstrap.usual());
        assertThat(none.graded()).isZero();
        assertThat(none.kappa().value()).isNaN();
    }

    @Test
    void gradesAgainstQuality() {
        List<EventMatches> films = new ArrayList<>();
        double[] quality = {5, 35, 50, 70, 100};
        for (int f = 0; f < 4; f++) {
            List<EventMark> labels = new ArrayList<>();
            List<EventMark> results = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                labels.add(graded(screen("l" + i, 10 * i), i + 1));
                results.add(with(screen("r" + i, 10 * i), Optional.empty(), Map.of("quality", quality[i])));
            }
            films.add(BY_TIME.match(labels, results, List.of()));
        }
        GradeAgreement agreement = GradeAgreement.of(films, ClipBootstrap.usual());
        assertThat(agreement.graded()).isEqualTo(20);
        assertThat(agreement.kappa().value()).isCloseTo(1, EXACT);
        assertThat(agreement.spearman().value()).isCloseTo(1, EXACT);
        assertThat(agreement.kappa().interval().known()).isTrue();
        assertThat(agreement.kappa().clips()).isEqualTo(4);
    }

    @Test
    void bandsOfQuality() {
        assertThat(GradeAgreement.gradeOf(0)).isEqualTo(1);
        assertThat(GradeAgreement.gradeOf(19.9)).isEqualTo(1);
        assertThat(GradeAgreement.gradeOf(20)).isEqualTo(2);
        assertThat(GradeAgreement.gradeOf(100)).isEqualTo(5);
    }

    @Test
    void aSecondAnnotatorsGradesAreComparedAsTheyAre() {
        EventMatches matches = BY_TIME.match(
                List.of(graded(screen("a", 0), 1), graded(screen("b", 10), 3), graded(screen("c", 20), 5)),
                List.of(graded(screen("x", 0), 2), graded(screen("y", 10), 3), graded(screen("z", 20), 4)),
                List.of());
        GradeAgreement agreement = GradeAgreement.of(List.of(matches), ClipBootstrap.usual());
        assertThat(agreement.spearman().value()).isCloseTo(1, EXACT);
        // Disagreements 1, 0, 1 against 3 x 3 chance pairs: 1 - 2 / ((1+4+9+1+0+1+9+4+1) / 3) = 0.8.
        assertThat(agreement.kappa().value()).isCloseTo(0.8, EXACT);
    }

    @Test
    void evenGuessesKnowTheCountAndNothingElse() {
        EventMark one = with(screen("a", 5), Optional.empty(), Map.of("gap", 0.25));
        EventMark two = with(screen("b", 50), Optional.empty(), Map.of("gap", 0.75));
        List<EventFilm> guesses = EvenGuesses.of(List.of(film(List.of(one, two), List.of())));
        assertThat(guesses.get(0).results()).hasSize(2);
        // The film lasts 360 s.
        assertThat(guesses.get(0).results())
                .extracting(EventMark::momentSeconds)
                .containsExactly(90.0, 270.0);
        assertThat(guesses.get(0).results().get(0).figures()).containsEntry("gap", 0.5);
        assertThat(guesses.get(0).identities()).isEmpty();
        assertThat(EvenGuesses.of(List.of(film(List.of(), List.of()))).get(0).results())
                .isEmpty();
    }

    @Test
    void oneKindAlone() {
        EventFilm film = film(
                List.of(screen("a", 5), mark("b", FindingKind.CUT, 5, roles())),
                List.of(screen("x", 5), mark("y", FindingKind.CUT, 5, roles())));
        assertThat(film.only(FindingKind.CUT).labels())
                .extracting(EventMark::id)
                .containsExactly("b");
        assertThat(film.only(FindingKind.CUT).results())
                .extracting(EventMark::id)
                .containsExactly("y");
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> new EventTolerance(0, 0.5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EventTolerance(1, 1.5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> probability(screen("a", 1), 1.5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> screen("a", Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EventFilm("f", -1, List.of(), List.of(), List.of(), Identities.unknown()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static EventScores scores(EventMatches matches) {
        return EventScores.of(List.of(matches));
    }

    private static EventFilm film(List<EventMark> labels, List<EventMark> results) {
        return new EventFilm("film", 0.1, labels, results, List.of(), Optional.of(Identities.same()));
    }

    private static EventMark screen(String id, double time) {
        return mark(id, FindingKind.SCREEN, time, roles());
    }

    private static SortedMap<Role, SortedSet<Integer>> roles(Object... rolesAndPeople) {
        SortedMap<Role, SortedSet<Integer>> roles = new TreeMap<>();
        for (int i = 0; i < rolesAndPeople.length; i += 2) {
            roles.put((Role) rolesAndPeople[i], new TreeSet<>(Set.of((Integer) rolesAndPeople[i + 1])));
        }
        return roles;
    }

    private static EventMark mark(String id, FindingKind kind, double time, SortedMap<Role, SortedSet<Integer>> roles) {
        return new EventMark(
                id, kind, Optional.empty(), time, time, time, roles, new TreeMap<>(), 1, OptionalInt.empty(), Set.of());
    }

    private static EventMark with(EventMark m, Optional<String> label, Map<String, Double> figures) {
        return new EventMark(
                m.id(),
                m.kind(),
                label,
                m.momentSeconds(),
                m.fromSeconds(),
                m.toSeconds(),
                m.roles(),
                new TreeMap<>(figures),
                m.probability(),
                m.grade(),
                m.cantTell());
    }

    private static EventMark probability(EventMark m, double probability) {
        return new EventMark(
                m.id(),
                m.kind(),
                m.label(),
                m.momentSeconds(),
                m.fromSeconds(),
                m.toSeconds(),
                m.roles(),
                m.figures(),
                probability,
                m.grade(),
                m.cantTell());
    }

    private static EventMark graded(EventMark m, int grade) {
        return new EventMark(
                m.id(),
                m.kind(),
                m.label(),
                m.momentSeconds(),
                m.fromSeconds(),
                m.toSeconds(),
                m.roles(),
                m.figures(),
                m.probability(),
                OptionalInt.of(grade),
                m.cantTell());
    }

    private static EventMark cantTell(EventMark m, String what) {
        return new EventMark(
                m.id(),
                m.kind(),
                m.label(),
                m.momentSeconds(),
                m.fromSeconds(),
                m.toSeconds(),
                m.roles(),
                m.figures(),
                m.probability(),
                m.grade(),
                Set.of(what));
    }
}
