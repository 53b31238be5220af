package floorgauge.events;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Body;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.IdentityDoubt;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.Role;
import floorgauge.events.standards.Standards;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MeasurementTest {

    private static final RuleSet RULES = RuleSet.fiba();
    private static final long SEED = 7;

    private static Findings measured(FilmTracks tracks) {
        return Measurement.measure(tracks, RULES, Standards.defaults());
    }

    @Test
    void noFramesGiveNothingAndSaySo() {
        Findings findings = measured(new FilmTracks(new TreeMap<>(), List.of(), Optional.empty()));
        assertThat(findings.possessions()).isEmpty();
        assertThat(findings.notSeen()).extracting(NotSeen::what).containsExactly("players", "ball");
    }

    @Test
    void oneFrameOfOnePlayerIsNoPossession() {
        Findings findings =
                measured(new FilmSketch(0).player(1, Team.FIRST, 0, 5, 1).exact(25));
        assertThat(findings.possessions()).isEmpty();
        assertThat(findings.notSeen()).extracting(NotSeen::what).contains("possessions");
    }

    @Test
    void playersOfNoTeamAreNamedAsNotSeen() {
        Findings findings =
                measured(new FilmSketch(4).player(1, Team.UNKNOWN, 0, 5, 1).exact(25));
        assertThat(findings.possessions()).isEmpty();
        assertThat(findings.notSeen()).extracting(NotSeen::why).contains("no track is known to belong to a team");
    }

    @Test
    void timeMayNotRunBackwards() {
        MeasurementStream stream = new MeasurementStream(RULES, Standards.defaults(), p -> {});
        stream.accept(new FloorFrame(0, 1, List.of(), Optional.empty()));
        assertThatThrownBy(() -> stream.accept(new FloorFrame(1, 0.5, List.of(), Optional.empty())))
                .hasMessageContaining("backwards at frame 1");
        assertThatThrownBy(() -> stream.accept(new FloorFrame(2, Double.NaN, List.of(), Optional.empty())))
                .hasMessageContaining("frame 2 has no finite time");
    }

    @Test
    void elevenAttackersAreMeasuredAndNamed() {
        FilmSketch sketch = new FilmSketch(6);
        for (int i = 0; i < 11; i++) {
            sketch.player(i + 1, Team.FIRST, 0, 1 + i, -6 + 1.1 * i);
        }
        Findings findings = measured(sketch.exact(25));
        assertThat(findings.possessions()).hasSize(1);
        assertThat(findings.possessions().get(0).possession().attackers()).hasSize(11);
        assertThat(findings.possessions().get(0).notSeen())
                .extracting(NotSeen::why)
                .anyMatch(w -> w.startsWith("11 players of one kit"));
    }

    /** Three against three: 2 runs from the corner to the wing off 3; his defender 12 passes at a chosen gap. */
    private static FilmSketch pinDown(double gap, boolean held, double screenerSlides) {
        double sx = 9.5;
        double sy = 4.5;
        FilmSketch sketch = new FilmSketch(8)
                .player(1, Team.FIRST, 0, 4.5, 0)
                .player(2, Team.FIRST, 0, 12.6, 6, 2.8, 12.6, 6, 5.0, 6.5, 5.2)
                .player(11, Team.SECOND, 0, 6, 0)
                .player(13, Team.SECOND, 0, 9.6, 1, 2.4, 10.2, 3.2);
        if (screenerSlides > 0) {
            double reach = 1.6 * screenerSlides;
            sketch.player(3, Team.FIRST, 0, sx - reach, sy, 2.7, sx - reach, sy, 5.9, sx + reach, sy);
        } else {
            sketch.player(3, Team.FIRST, 0, 8, 0.5, 1, 8, 0.5, 2.4, sx, sy, 5.2, sx, sy, 6.8, 11, 2);
        }
        if (held) {
            double hx = sx + (0.5 + gap) * 2.5 / Math.hypot(2.5, 0.5);
            double hy = sy + (0.5 + gap) * 0.5 / Math.hypot(2.5, 0.5);
            sketch.player(
                    12, Team.SECOND, 0, 12, 5.0, 3.1, 12, 5.0, 4.4, hx, hy, 5.0, hx, hy, 5.8, 10.2, 3.4, 7, 7.3, 4.6);
        } else {
            double ax = 12.2;
            double ay = 5.0;
            double heading = Math.atan2(sy - ay, sx - ax) - Math.asin((0.5 + gap) / Math.hypot(sx - ax, sy - ay));
            double bx = ax + 5.5 * Math.cos(heading);
            double by = ay + 5.5 * Math.sin(heading);
            sketch.player(12, Team.SECOND, 0, ax, ay, 3.0, ax, ay, 5.2, bx, by);
        }
        return sketch;
    }

    private static Finding only(Findings findings, FindingKind kind) {
        assertThat(findings.ofKind(kind)).as(kind.words()).hasSize(1);
        return findings.ofKind(kind).get(0);
    }

    @ParameterizedTest
    @ValueSource(doubles = {15, 25, 30, 60000 / 1001.0})
    void aSoundScreenIsMeasuredWithItsGapAtAnyFrameRate(double framesPerSecond) {
        Findings findings = measured(pinDown(0.05, true, 0).exact(framesPerSecond));
        Finding screen = only(findings, FindingKind.SCREEN);
        assertThat(screen.holder(Role.SCREENER)).hasValue(3);
        assertThat(screen.holder(Role.USER)).hasValue(2);
        assertThat(screen.holder(Role.USER_DEFENDER)).hasValue(12);
        assertThat(screen.holder(Role.SCREENER_DEFENDER)).hasValue(13);
        assertThat(screen.label()).isEqualTo("down screen");
        assertThat(screen.figure("gap").orElseThrow().value()).isCloseTo(0.05, within(0.02));
        assertThat(screen.figure("contact probability").orElseThrow().value()).isGreaterThan(0.9);
        assertThat(findings.all()).filteredOn(f -> f.kind().isFlag()).isEmpty();
    }

    @Test
    void aStanceIsThatOfTheRestAndNotOfWhoRunsBy() {
        FilmTracks plain = pinDown(0.05, true, 0).exact(25);
        List<PlayerTrack> players = plain.players().stream()
                .map(p -> p.id() == 3 ? standing(p, 4.1) : p)
                .toList();
        Finding screen =
                only(measured(new FilmTracks(plain.frameTimesSeconds(), players, plain.ball())), FindingKind.SCREEN);
        assertThat(screen.fromSeconds()).isLessThan(4.1);
        assertThat(screen.toSeconds()).isGreaterThan(4.3);
        assertThat(screen.figure("quality: base").orElseThrow().value()).isCloseTo(1, within(1e-9));
    }

    /** Feet one and a half shoulders apart, and from a time on, hidden, seemingly together. */
    private static PlayerTrack standing(PlayerTrack track, double hiddenFromSeconds) {
        List<PlayerObservation> seen = track.observations().stream()
                .map(o -> new PlayerObservation(
                        o.frame(),
                        o.timeSeconds(),
                        o.foot(),
                        o.source(),
                        o.box(),
                        o.pose(),
                        new Body(
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                OptionalDouble.of(o.timeSeconds() < hiddenFromSeconds ? 1.5 : 0.1),
                                OptionalDouble.empty()),
                        o.score()))
                .toList();
        return new PlayerTrack(track.id(), track.team(), track.teamProbability(), seen, track.doubts());
    }

    @ParameterizedTest
    @ValueSource(doubles = {15, 25, 30, 60000 / 1001.0})
    void aScreenBesideTheDefenderIsWeakAtAnyFrameRate(double framesPerSecond) {
        Findings findings = measured(pinDown(0.4, false, 0).exact(framesPerSecond));
        List<Finding> flags =
                findings.all().stream().filter(f -> f.kind().isFlag()).toList();
        assertThat(flags).hasSize(1);
        assertThat(flags.get(0).kind()).isIn(FindingKind.WEAK_SCREEN, FindingKind.MISSED_SCREEN);
        assertThat(flags.get(0).figure("gap").orElseThrow().value()).isCloseTo(0.4, within(0.03));
        assertThat(flags.get(0).severity()).isPresent();
        assertThat(flags.get(0).frames()).hasSize(3);
        assertThat(flags.get(0).sentence())
                .startsWith("A down screen by #3 for #2")
                .contains("±");
    }

    @Test
    void aSlidingScreenerIsAMovingScreen() {
        Findings findings = measured(pinDown(0.0, true, 0.6).exact(25));
        Finding flag = only(findings, FindingKind.MOVING_SCREEN);
        assertThat(flag.holder(Role.SCREENER)).hasValue(3);
        assertThat(flag.figure("screener speed").orElseThrow().value()).isCloseTo(1.1, within(0.15));
    }

    @Test
    void theOtherEndGivesTheSameScreen() {
        Findings findings = measured(turned(pinDown(0.05, true, 0).exact(25)));
        Finding screen = only(findings, FindingKind.SCREEN);
        assertThat(findings.possessions().get(0).possession().end()).isEqualTo(CourtEnd.NEGATIVE_X);
        assertThat(screen.label()).isEqualTo("down screen");
        assertThat(screen.holder(Role.SCREENER)).hasValue(3);
    }

    private static FilmTracks turned(FilmTracks tracks) {
        return new FilmTracks(
                tracks.frameTimesSeconds(),
                tracks.players().stream()
                        .map(t -> new floorgauge.court.track.PlayerTrack(
                                t.id(),
                                t.team(),
                                t.teamProbability(),
                                t.observations().stream()
                                        .map(o -> new floorgauge.court.track.PlayerObservation(
                                                o.frame(),
                                                o.timeSeconds(),
                                                o.foot().turnedHalf(),
                                                o.source(),
                                                o.box(),
                                                o.pose(),
                                                o.body(),
                                                o.score()))
                                        .toList(),
                                t.doubts()))
                        .toList(),
                tracks.ball());
    }

    @Test
    void noiseWidensTheErrorAndLeavesTheGapWithinIt() {
        int inside = 0;
        int films = 40;
        for (int k = 0; k < films; k++) {
            Findings findings = measured(pinDown(0.4, false, 0).seen(25, 0.08, SEED + k));
            if (findings.ofKind(FindingKind.SCREEN).isEmpty()) {
                continue;
            }
            var gap = findings.ofKind(FindingKind.SCREEN).get(0).figure("gap").orElseThrow();
            assertThat(gap.standardError().orElseThrow()).isBetween(0.03, 0.2);
            if (Math.abs(gap.value() - 0.4) <= 2 * gap.standardError().orElseThrow()) {
                inside++;
            }
        }
        assertThat(inside).as("seeds from " + SEED).isGreaterThanOrEqualTo(34);
    }

    @ParameterizedTest
    @ValueSource(doubles = {15, 25, 30, 60000 / 1001.0})
    void twoAttackersTwoMetresApartCrowdTheFloor(double framesPerSecond) {
        FilmSketch sketch = new FilmSketch(9)
                .player(1, Team.FIRST, 0, 5, 0)
                .player(2, Team.FIRST, 0, 9, -6)
                .player(3, Team.FIRST, 0, 8, 5, 1, 8, 5, 3.4, 6, 2, 6, 6, 2, 8.4, 8, 5)
                .player(11, Team.SECOND, 0, 6.5, 0)
                .player(12, Team.SECOND, 0, 10, -4.5)
                .player(13, Team.SECOND, 0, 9, 3.8, 1, 9, 3.8, 3.4, 7.6, 1.7, 6, 7.6, 1.7, 8.4, 9, 3.8);
        Findings findings = measured(sketch.exact(framesPerSecond));
        Finding flag = only(findings, FindingKind.CROWDED_FLOOR);
        assertThat(flag.roles()).extracting(r -> r.trackId()).containsExactly(1, 3);
        assertThat(flag.figure("least distance").orElseThrow().value()).isCloseTo(Math.sqrt(5), within(0.01));
        assertThat(flag.figure("duration").orElseThrow().value()).isCloseTo(3.40, within(0.1));
    }

    @Test
    void aFrameRateDoesNotMoveAFigure() {
        double reference = gapAt(25);
        for (double rate : new double[] {15, 30, 60000 / 1001.0}) {
            assertThat(gapAt(rate)).isCloseTo(reference, within(0.01));
        }
    }

    private static double gapAt(double framesPerSecond) {
        Finding screen = only(measured(pinDown(0.3, false, 0).exact(framesPerSecond)), FindingKind.SCREEN);
        return screen.figure("gap").orElseThrow().value();
    }

    @Test
    void aDoubtfulIdentityLowersTheProbabilityAndIsNamed() {
        FilmSketch sketch = new FilmSketch(7)
                .player(1, Team.FIRST, List.of(new IdentityDoubt(9, 3, 4, 0.2)), 0, 6, 0)
                .player(3, Team.FIRST, 0, 6, 2)
                .player(11, Team.SECOND, 0, 7.5, 0)
                .player(13, Team.SECOND, 0, 7.6, 1.7);
        Finding flag = only(measured(sketch.exact(25)), FindingKind.CROWDED_FLOOR);
        assertThat(flag.probability()).isCloseTo(0.8, within(0.01));
        assertThat(flag.notSeen()).extracting(NotSeen::what).contains("identity of #1");
    }

    @Test
    void identicalInputGivesIdenticalFindings() {
        FilmTracks tracks = pinDown(0.4, false, 0).seen(30, 0.08, SEED);
        assertThat(measured(tracks)).isEqualTo(measured(tracks));
        assertThat(measured(tracks).toString()).isEqualTo(measured(tracks).toString());
    }

    /** 1 has the ball till 3 s, his defender 11 from then on for a while, and 1 again. */
    private static Findings touchedFor(double seconds) {
        double back = 3 + seconds;
        return measured(new FilmSketch(9)
                .player(1, Team.FIRST, 0, 5, 0)
                .player(2, Team.FIRST, 0, 8, 5)
                .player(3, Team.FIRST, 0, 8, -5)
                .player(11, Team.SECOND, 0, 6.4, 0)
                .player(12, Team.SECOND, 0, 9, 4.2)
                .player(13, Team.SECOND, 0, 9, -4.2)
                .ball(0, 5.2, 0, 3, 5.2, 0, 3.04, 6.2, 0, back - 0.04, 6.2, 0, back, 5.2, 0, 9, 5.2, 0)
                .ballHeight(t -> 1)
                .heldBy(t -> OptionalInt.of(t > 3 && t < back ? 11 : 1))
                .exact(25));
    }

    @Test
    void aDefenderAfterWhomTheAttackHasTheBallAgainOnlyTouchedIt() {
        assertThat(touchedFor(0.3).ofKind(FindingKind.TURNOVER)).isEmpty();
    }

    @Test
    void aBallThatStaysWithTheDefenceIsLost() {
        assertThat(touchedFor(7).ofKind(FindingKind.TURNOVER)).hasSize(1);
    }
}
