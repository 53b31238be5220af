package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.Body;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.PlayerObservation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FootContactTest {

    private static PlayerObservation at(int look, double left, double right) {
        Body body = new Body(
                Optional.of(ankle(left)),
                Optional.of(ankle(right)),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        return new PlayerObservation(
                look,
                0.08 * look,
                ankle((left + right) / 2),
                FootSource.ANKLES,
                Optional.empty(),
                Optional.empty(),
                body,
                0.8);
    }

    private static FloorEstimate ankle(double x) {
        return new FloorEstimate(new FloorPoint(x, 0), FloorCovariance.isotropic(0.03));
    }

    private static List<Double> contacts(List<PlayerObservation> track) {
        List<Double> told = new ArrayList<>();
        FootContact.told(track)
                .forEach(o -> told.add(o.body().plantedProbability().orElse(Double.NaN)));
        return told;
    }

    @Test
    void nothingAndASingleLookSayNothing() {
        assertThat(FootContact.told(List.of())).isEmpty();
        assertThat(contacts(List.of(at(0, 0, 0.3)))).containsExactly(Double.NaN);
    }

    @Test
    void whoStandsIsPlantedWhoFliesIsNot() {
        List<PlayerObservation> standing = new ArrayList<>();
        List<PlayerObservation> flying = new ArrayList<>();
        List<PlayerObservation> walking = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            standing.add(at(i, 0, 0.3));
            flying.add(at(i, 0.4 * i, 0.4 * i + 5));
            walking.add(at(i, 0, 0.3 * i + 5));
        }
        assertThat(contacts(standing)).allMatch(p -> p > 0.95);
        assertThat(contacts(flying)).allMatch(p -> p < 0.05);
        assertThat(contacts(walking)).as("one foot rests").allMatch(p -> p > 0.8);
    }

    @Test
    void feetWhoseNamesChangeOverStayPlanted() {
        assertThat(contacts(List.of(at(0, 0, 0.4), at(1, 0.4, 0), at(2, 0, 0.4))))
                .allMatch(p -> p > 0.95);
    }
}
