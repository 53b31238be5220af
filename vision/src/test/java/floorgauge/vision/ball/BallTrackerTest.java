package floorgauge.vision.ball;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.OpenCv;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.BallObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A pass of five metres between two players who stand still: held for a second, in the air, held for a second. */
class BallTrackerTest {

    private static final long SEED = 21;
    private static final double RELEASE = 1.0;
    private static final double RECEPTION = 1.6;

    private final Stand stand = new Stand();
    private final List<PlayerTrack> players =
            List.of(Stand.standing(1, 4, -2, 3), Stand.standing(2, 9, -1, 3), Stand.standing(3, 6, 4, 3));

    @BeforeAll
    static void load() {
        OpenCv.load();
    }

    private List<BallLook> looks() {
        Random random = new Random(SEED);
        List<BallLook> looks = new ArrayList<>();
        for (int k = 0; k < 40; k++) {
            double t = k / 15.0;
            double[] at = place(t);
            looks.add(new BallLook(
                    2L * k,
                    t,
                    List.of(stand.sighting(at[0], at[1], at[2], random.nextGaussian(), random.nextGaussian(), 0.8))));
        }
        return looks;
    }

    private static double[] place(double t) {
        double s = Math.max(0, Math.min(1, (t - RELEASE) / (RECEPTION - RELEASE)));
        double flown = s * (RECEPTION - RELEASE);
        double rise = Flight.GRAVITY * (RECEPTION - RELEASE) / 2;
        return new double[] {4.3 + s * 4.4, -2 + s, 1.3 + rise * flown - Flight.GRAVITY * flown * flown / 2};
    }

    @Test
    void noSightingIsNoBall() {
        CourtCalibration calibration = stand.calibration();
        assertThat(BallTracker.track(List.of(), players, calibration))
                .hasValueSatisfying(b -> assertThat(b).isEmpty());
    }

    @Test
    void thePassGoesFromHandsToHandsAtTheRightTime() {
        List<BallObservation> ball =
                BallTracker.track(looks(), players, stand.calibration()).orElseThrow();
        assertThat(ball).as("seed " + SEED).hasSize(40);
        double lastHeld = ball.stream()
                .filter(b -> b.heldBy().equals(OptionalInt.of(1)))
                .mapToDouble(BallObservation::timeSeconds)
                .max()
                .orElseThrow();
        double firstHeld = ball.stream()
                .filter(b -> b.heldBy().equals(OptionalInt.of(2)))
                .mapToDouble(BallObservation::timeSeconds)
                .min()
                .orElseThrow();
        assertThat(lastHeld).as("seed " + SEED).isCloseTo(RELEASE, within(0.14));
        assertThat(firstHeld).as("seed " + SEED).isCloseTo(RECEPTION, within(0.14));
        assertThat(ball).noneMatch(b -> b.heldBy().equals(OptionalInt.of(3)));
    }

    @Test
    void inFlightTheBallIsPlacedInSpace() {
        BallObservation middle = BallTracker.track(looks(), players, stand.calibration()).orElseThrow().stream()
                .filter(b -> Math.abs(b.timeSeconds() - 1.3333) < 0.01)
                .findFirst()
                .orElseThrow();
        double[] at = place(middle.timeSeconds());
        assertThat(middle.heldBy()).isEmpty();
        assertThat(middle.floor().mean().distanceTo(new FloorPoint(at[0], at[1])))
                .as("seed " + SEED)
                .isLessThan(0.4);
        assertThat(middle.heightMetres().orElseThrow()).isCloseTo(at[2], within(0.3));
    }

    /** Two metres behind the holder as the camera sees them, the ball for two seconds on the line to the one behind. */
    @Test
    void theDefenderOnTheLineOfSightDoesNotStealTheBall() {
        List<PlayerTrack> pair = List.of(Stand.standing(1, 4, -2, 4), Stand.standing(2, Team.SECOND, 4.65, 0, 4));
        List<BallLook> looks = new ArrayList<>();
        for (int k = 0; k < 60; k++) {
            double t = k / 15.0;
            double x = 3.8 + 0.75 * Math.max(0, Math.min(1, Math.min(t - 0.5, 3.5 - t) / 0.5));
            looks.add(new BallLook(2L * k, t, List.of(stand.sighting(x, -2, 1.2, 0, 0, 0.8))));
        }
        List<BallObservation> ball =
                BallTracker.track(looks, pair, stand.calibration()).orElseThrow();
        assertThat(ball).hasSize(60).allMatch(b -> b.heldBy().equals(OptionalInt.of(1)));
    }

    @Test
    void whoTakesTheBallAwayHasIt() {
        List<PlayerTrack> pair = List.of(Stand.standing(1, 4, -2, 4), Stand.standing(2, Team.SECOND, 6.5, -2, 4));
        List<BallLook> looks = new ArrayList<>();
        for (int k = 0; k < 60; k++) {
            double t = k / 15.0;
            looks.add(new BallLook(2L * k, t, List.of(stand.sighting(t < 2 ? 4.2 : 6.3, -2, 1.2, 0, 0, 0.8))));
        }
        List<BallObservation> ball =
                BallTracker.track(looks, pair, stand.calibration()).orElseThrow();
        assertThat(ball.get(ball.size() - 1).heldBy()).hasValue(2);
        assertThat(ball.get(0).heldBy()).hasValue(1);
    }
}
