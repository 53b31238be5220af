package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Body;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import floorgauge.vision.kit.KitColour;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;

/** On simulated people whose paths are known. */
class OfflineTrackerTest {

    private static final KitColour RED = kit(45, 50, 35);
    private static final KitColour WHITE = kit(90, 0, 0);

    private static KitColour kit(double l, double a, double b) {
        KitColour.Sampler sampler = new KitColour.Sampler();
        sampler.add(l, a, b);
        return sampler.kit();
    }

    private record Walker(KitColour kit, DoubleFunction<FloorPoint> path) {}

    /** Films the walkers: seen with an error, at times missed, among false alarms. */
    private static final class Filming {
        final Random random;
        double rate = 12.5;
        double seconds = 8;
        double missed = 0.1;
        double falseAlarms = 0.1;
        double error = 0.1;
        TrackingSettings settings = TrackingSettings.defaults();

        Filming(long seed) {
            random = new Random(seed);
        }

        FilmTracks film(List<Walker> walkers) {
            OfflineTracker tracker = new OfflineTracker(settings, 0.4, RuleSet.fiba());
            for (int frame = 0; frame / rate < seconds; frame++) {
                double t = frame / rate;
                List<Sighting> seen = new ArrayList<>();
                for (Walker w : walkers) {
                    FloorPoint p = w.path().apply(t);
                    if (p != null && random.nextDouble() >= missed) {
                        seen.add(sighting(frame, t, noisy(p), Optional.of(w.kit())));
                    }
                }
                if (random.nextDouble() < falseAlarms) {
                    FloorPoint p = new FloorPoint(random.nextDouble() * 14, random.nextDouble() * 15 - 7.5);
                    seen.add(sighting(frame, t, p, Optional.empty()));
                }
                Collections.shuffle(seen, random);
                tracker.looked(frame, t, seen);
            }
            return tracker.tracks();
        }

        private FloorPoint noisy(FloorPoint p) {
            return new FloorPoint(
                    p.xMetres() + error * random.nextGaussian(), p.yMetres() + error * random.nextGaussian());
        }

        private Sighting sighting(long frame, double t, FloorPoint p, Optional<KitColour> kit) {
            FloorEstimate foot = new FloorEstimate(p, FloorCovariance.isotropic(Math.max(0.02, error)));
            return new Sighting(
                    new PlayerObservation(
                            frame, t, foot, FootSource.ANKLES, Optional.empty(), Optional.empty(), Body.UNSEEN, 0.8),
                    kit,
                    OptionalDouble.empty());
        }
    }

    /** The greatest distance of a track from a path, over the frames of the track. */
    private static double farthest(PlayerTrack track, Walker walker) {
        return track.observations().stream()
                .mapToDouble(o -> o.foot().mean().distanceTo(walker.path().apply(o.timeSeconds())))
                .max()
                .orElseThrow();
    }

    @Test
    void theFilmsLastFramesAreFilledThoughNobodyLooksAtThem() {
        OfflineTracker tracker = new OfflineTracker(TrackingSettings.defaults(), 0.4, RuleSet.fiba());
        Filming filming = new Filming(5);
        for (int frame = 0; frame < 51; frame++) {
            double t = frame / 25.0;
            tracker.passed(frame, t);
            if (frame % 2 == 0 && frame < 50) {
                FloorPoint p = new FloorPoint(2 + t, 0);
                tracker.looked(frame, t, List.of(filming.sighting(frame, t, p, Optional.of(RED))));
            }
        }
        PlayerTrack track = tracker.tracks().players().get(0);
        PlayerObservation last = track.observations().get(track.observations().size() - 1);
        assertThat(last.frame()).isEqualTo(50);
        assertThat(last.source()).isEqualTo(FootSource.PREDICTED);
        assertThat(last.foot().mean().xMetres()).isCloseTo(4, within(0.1));
    }

    @Test
    void nobodyNoTracks() {
        FilmTracks tracks = new Filming(1).film(List.of());
        assertThat(tracks.frameTimesSeconds()).hasSize(100);
        assertThat(tracks.players()).isEmpty();
    }

    @Test
    void noFramesNoTracks() {
        FilmTracks tracks = new OfflineTracker(TrackingSettings.defaults(), 0.4, RuleSet.fiba()).tracks();
        assertThat(tracks.players()).isEmpty();
        assertThat(tracks.frameTimesSeconds()).isEmpty();
    }

    @Test
    void onePersonAmongFalseAlarmsIsOneTrackWithoutHoles() {
        Walker walker = new Walker(RED, t -> new FloorPoint(2 + t, 3 * Math.sin(t)));
        Filming filming = new Filming(2);
        filming.falseAlarms = 0.5;
        FilmTracks tracks = filming.film(List.of(walker));
        assertThat(tracks.players()).hasSize(1);
        PlayerTrack track = tracks.players().get(0);
        assertThat(track.observations()).hasSizeGreaterThanOrEqualTo(98);
        assertThat(track.doubts()).isEmpty();
        assertThat(farthest(track, walker)).isLessThan(0.6);
        assertThat(track.observations().stream().map(PlayerObservation::source))
                .contains(FootSource.ANKLES, FootSource.PREDICTED);
    }

    @Test
    void aPersonHiddenBehindAScreenIsJoinedAndTheHoleGrowsUncertain() {
        Walker walker = new Walker(RED, t -> t > 3 && t < 4.5 ? null : new FloorPoint(2 + t, 1));
        FilmTracks tracks = new Filming(3).film(List.of(walker));
        assertThat(tracks.players()).hasSize(1);
        PlayerTrack track = tracks.players().get(0);
        PlayerObservation before = at(track, 2.96);
        PlayerObservation middle = at(track, 3.76);
        assertThat(middle.source()).isEqualTo(FootSource.PREDICTED);
        assertThat(middle.score()).isZero();
        assertThat(middle.foot().covariance().standardErrorMetres())
                .isGreaterThan(2 * before.foot().covariance().standardErrorMetres());
        assertThat(middle.foot().mean().distanceTo(new FloorPoint(5.76, 1))).isLessThan(0.6);
    }

    @Test
    void aHoleLongerThanMayBeFilledStaysOpen() {
        Walker walker = new Walker(RED, t -> t > 3 && t < 6 ? null : new FloorPoint(5, 1));
        FilmTracks tracks = new Filming(4).film(List.of(walker));
        assertThat(tracks.players()).hasSize(1);
        assertThat(tracks.players().get(0).observations())
                .noneMatch(o -> o.timeSeconds() > 3.2 && o.timeSeconds() < 5.8);
    }

    @Test
    void twoInDifferentKitsWhoCollideAndBounceBackKeepTheirTracks() {
        // Both stop in one spot for a second and go back where they came from: motion alone says they passed.
        Walker red = new Walker(RED, t -> new FloorPoint(7 - Math.max(0.1, Math.abs(t - 4) - 0.5), 0));
        Walker white = new Walker(WHITE, t -> new FloorPoint(7 + Math.max(0.1, Math.abs(t - 4) - 0.5), 0));
        for (long seed = 10; seed < 30; seed++) {
            FilmTracks tracks = new Filming(seed).film(List.of(red, white));
            assertThat(tracks.players()).as("seed %d", seed).hasSize(2);
            for (PlayerTrack track : tracks.players()) {
                double distance = Math.min(farthest(track, red), farthest(track, white));
                assertThat(distance).as("seed %d", seed).isLessThan(1.2);
            }
        }
    }

    @Test
    void twoInTheSameKitWhoMeetAndPartAreReportedAsInDoubt() {
        Walker one = new Walker(RED, t -> new FloorPoint(7 - Math.max(0.1, Math.abs(t - 4) - 0.5), 0.1));
        Walker other = new Walker(RED, t -> new FloorPoint(7 + Math.max(0.1, Math.abs(t - 4) - 0.5), -0.1));
        FilmTracks tracks = new Filming(5).film(List.of(one, other));
        assertThat(tracks.players()).hasSize(2);
        assertThat(tracks.players().get(0).doubts()).anySatisfy(d -> {
            assertThat(d.otherTrackId()).isEqualTo(2);
            assertThat(d.fromSeconds()).isBetween(2.5, 5.5);
            assertThat(d.swapProbability()).isGreaterThan(0.02);
        });
        assertThat(tracks.players().get(1).doubts()).isNotEmpty();
    }

    @Test
    void twoWhoCrossAtSpeedAreNotExchanged() {
        Walker one = new Walker(RED, t -> new FloorPoint(1 + 1.5 * t, -0.3));
        Walker other = new Walker(RED, t -> new FloorPoint(13 - 1.5 * t, 0.3));
        for (long seed = 40; seed < 60; seed++) {
            FilmTracks tracks = new Filming(seed).film(List.of(one, other));
            assertThat(tracks.players()).as("seed %d", seed).hasSize(2);
            for (PlayerTrack track : tracks.players()) {
                double distance = Math.min(farthest(track, one), farthest(track, other));
                assertThat(distance).as("seed %d", seed).isLessThan(1);
            }
        }
    }

    @Test
    void withPlayersKnownNoMoreThanTheseAreTracked() {
        List<Walker> walkers = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            double y = 3 * i - 3;
            walkers.add(new Walker(i == 0 ? RED : WHITE, t -> new FloorPoint(3 + 0.5 * t, y)));
        }
        Filming filming = new Filming(6);
        filming.settings = TrackingSettings.defaults().withPlayersPerSide(1);
        assertThat(filming.film(walkers).players()).hasSize(2);
    }

    /** Ten who cross a yard one after the other, four at a time, two kits among them, most of them outside any lines. */
    private static List<Walker> passersBy() {
        List<Walker> walkers = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            double from = 1.5 * i;
            double y = 4 * (i % 4) + 4;
            boolean leftToRight = i % 2 == 0;
            walkers.add(new Walker(i % 3 == 0 ? WHITE : RED, t -> {
                double x = 1.3 * (t - from) - 3;
                return t < from || t > from + 5 ? null : new FloorPoint(leftToRight ? x : -x, y);
            }));
        }
        return walkers;
    }

    @Test
    void everyoneWhoPassesByIsFollowedWithoutATeam() {
        Filming filming = new Filming(9);
        filming.seconds = 20;
        filming.settings = TrackingSettings.defaults().withEveryone();
        List<Walker> walkers = passersBy();
        FilmTracks tracks = filming.film(walkers);
        assertThat(tracks.players()).as("tracks").hasSameSizeAs(walkers);
        assertThat(tracks.players().stream().map(PlayerTrack::team)).containsOnly(Team.UNKNOWN);
        for (int i = 0; i < walkers.size(); i++) {
            Walker walker = walkers.get(i);
            assertThat(farthest(tracks.players().get(i), walker))
                    .as("passer-by %d", i)
                    .isLessThan(1);
        }
    }

    @Test
    void whoOnlyPassesOutsideTheLinesIsNoPlayer() {
        Filming filming = new Filming(9);
        filming.seconds = 20;
        assertThat(filming.film(passersBy()).players())
                .hasSizeLessThan(passersBy().size());
    }

    @Test
    void theFrameRateChangesNothingOfSubstance() {
        Walker one = new Walker(RED, t -> new FloorPoint(1 + t, Math.sin(t)));
        Walker other = new Walker(WHITE, t -> new FloorPoint(9 - t, Math.cos(t)));
        for (double rate : new double[] {8, 12.5, 25, 50}) {
            Filming filming = new Filming(7);
            filming.rate = rate;
            FilmTracks tracks = filming.film(List.of(one, other));
            assertThat(tracks.players()).as("%s frames a second", rate).hasSize(2);
        }
    }

    @Test
    void theSameSightingsGiveTheSameTracks() {
        Walker one = new Walker(RED, t -> new FloorPoint(1 + t, Math.sin(t)));
        Walker other = new Walker(WHITE, t -> new FloorPoint(9 - t, Math.cos(t)));
        assertThat(new Filming(8).film(List.of(one, other))).isEqualTo(new Filming(8).film(List.of(one, other)));
    }

    private static PlayerObservation at(PlayerTrack track, double seconds) {
        return track.observations().stream()
                .filter(o -> Math.abs(o.timeSeconds() - seconds) < 0.05)
                .findFirst()
                .orElseThrow();
    }
}
