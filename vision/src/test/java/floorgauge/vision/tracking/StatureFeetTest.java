package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.PlayerObservation;
import floorgauge.vision.body.UnderHead;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A camera 6 m high and 15 m away along x: a metre of height is 2.5 m of floor. */
class StatureFeetTest {

    private static final FloorPoint SPOT = new FloorPoint(0, 0);
    private static final double STATURE = 1.95;
    private static final double FLOOR_PER_METRE = 2.5;

    @Test
    void feetTakenForTheScreenersAreMovedBackUnderTheHead() {
        List<Sighting> seen = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            seen.add(sighting(i, SPOT, 0.1, FootSource.ANKLES, STATURE));
        }
        // The screener stands a metre nearer the camera: over his feet the defender would be 0.4 m higher than he is.
        FloorPoint screener = new FloorPoint(-1, 0);
        seen.add(sighting(40, screener, 0.3, FootSource.ANKLES, STATURE + 1 / FLOOR_PER_METRE));
        Sighting placed = StatureFeet.placed(new Tracklet(seen)).sightings().get(40);
        assertThat(placed.foot().mean().xMetres()).isGreaterThan(-0.5);
        double error = Math.sqrt(placed.foot().covariance().xx());
        assertThat(Math.abs(placed.foot().mean().xMetres())).isLessThan(2 * error);
    }

    @Test
    void aRunnerWhoIsLowerThanHeStandsKeepsHisFeet() {
        List<Sighting> seen = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            seen.add(sighting(i, SPOT, 0.1, FootSource.ANKLES, i < 30 ? STATURE : STATURE - 0.2));
        }
        Tracklet placed = StatureFeet.placed(new Tracklet(seen));
        assertThat(placed.sightings().get(35).foot()).isEqualTo(seen.get(35).foot());
    }

    @Test
    void aRunnerInTheAirStandsNearerTheCameraThanHisFeetSeemTo() {
        double speed = 4;
        List<Sighting> seen = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            seen.add(sighting(
                    i, new FloorPoint(0, i * speed * TestSightings.STEP_SECONDS), 0.1, FootSource.ANKLES, STATURE));
        }
        FloorEstimate foot =
                StatureFeet.placed(new Tracklet(seen)).sightings().get(20).foot();
        // The lower foot is 0.06 m up at this speed, and the camera is on the side of negative x.
        assertThat(foot.mean().xMetres()).isCloseTo(-0.06 * FLOOR_PER_METRE, within(0.01));
        assertThat(foot.mean().yMetres()).isCloseTo(seen.get(20).foot().mean().yMetres(), within(1e-9));
        assertThat(Math.sqrt(foot.covariance().xx())).isCloseTo(Math.hypot(0.1, 0.06 * FLOOR_PER_METRE), within(0.01));
    }

    @Test
    void hiddenFeetAreSurerWithTheHeadThanWithout() {
        List<Sighting> seen = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            seen.add(sighting(i, SPOT, 0.1, FootSource.ANKLES, STATURE));
        }
        seen.add(sighting(40, new FloorPoint(0.8, 0), 1, FootSource.BOX_BOTTOM, Double.NaN));
        Sighting placed = StatureFeet.placed(new Tracklet(seen)).sightings().get(40);
        assertThat(placed.foot().mean().xMetres()).isCloseTo(0, within(0.15));
        assertThat(Math.sqrt(placed.foot().covariance().xx())).isLessThan(0.35);
    }

    @Test
    void aFewSightingsTeachNothing() {
        Tracklet track = new Tracklet(List.of(
                sighting(0, SPOT, 0.1, FootSource.ANKLES, STATURE),
                sighting(1, new FloorPoint(1, 0), 1, FootSource.BOX_BOTTOM, Double.NaN)));
        assertThat(StatureFeet.placed(track)).isSameAs(track);
    }

    private static Sighting sighting(int i, FloorPoint foot, double error, FootSource source, double height) {
        double t = i * TestSightings.STEP_SECONDS;
        PlayerObservation plain = TestSightings.at(t, foot, Optional.empty(), OptionalDouble.empty())
                .observation();
        PlayerObservation o = new PlayerObservation(
                plain.frame(),
                t,
                new FloorEstimate(foot, FloorCovariance.isotropic(error)),
                source,
                plain.box(),
                plain.pose(),
                plain.body(),
                plain.score());
        // The head is seen where it is: over the spot at the stature, nearer the camera for every metre more.
        UnderHead head = new UnderHead(
                new FloorPoint(SPOT.xMetres() + FLOOR_PER_METRE * (STATURE - 1), 0),
                new FloorPoint(SPOT.xMetres() + FLOOR_PER_METRE * (STATURE - 2), 0),
                FloorCovariance.isotropic(0.1));
        return new Sighting(
                o,
                Optional.empty(),
                OptionalDouble.empty(),
                Double.isNaN(height) ? OptionalDouble.empty() : OptionalDouble.of(height),
                Optional.empty(),
                Optional.of(head));
    }
}
