package floorgauge.eval.events;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.floor.FloorPoint;
import floorgauge.events.Measurement;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.SpacingSample;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Spacing measured on true tracks against the definition, worked out from the scene's own places at the same instants. */
class SpacingDefinitionTest {

    private static final List<String> SCENES =
            List.of("pin-down-sound", "horns-double-sound", "three-on-three-sound", "stalled-sound");

    @Test
    void distancesToTheNearestTeamMateAreWithinAMillimetre() {
        List<Double> errors = new ArrayList<>();
        for (String name : SCENES) {
            PlayedScene scene = ScenarioLibrary.load(name, 301);
            for (PossessionFindings possession : Measurement.measure(
                            TrueTracks.sample(scene, 25), scene.rules(), Standards.defaults())
                    .possessions()) {
                for (SpacingSample sample : possession.spacing()) {
                    List<FloorPoint> attackers = attackers(scene, sample.timeSeconds());
                    if (sample.attackers() != attackers.size()) {
                        continue;
                    }
                    double[] nearest = attackers.stream()
                            .mapToDouble(a -> attackers.stream()
                                    .filter(b -> b != a)
                                    .mapToDouble(a::distanceTo)
                                    .min()
                                    .orElseThrow())
                            .sorted()
                            .toArray();
                    double mean = Arrays.stream(nearest).average().orElseThrow();
                    errors.add(Math.abs(sample.leastNearestMetres().orElseThrow() - nearest[0]));
                    errors.add(Math.abs(sample.meanNearestMetres().orElseThrow() - mean));
                }
            }
        }
        errors.sort(Comparator.naturalOrder());
        double middle = errors.get(errors.size() / 2);
        double most = errors.get(errors.size() * 95 / 100);
        double worst = errors.get(errors.size() - 1);
        System.out.printf(
                Locale.ROOT,
                "spacing against its definition: median %.2f mm, 95 in 100 within %.2f mm, worst %.2f mm of %d%n",
                1000 * middle,
                1000 * most,
                1000 * worst,
                errors.size());
        assertThat(errors.size()).isGreaterThan(1000);
        assertThat(most).isLessThan(0.001);
        // What is left is the smoother's, where somebody speeds up or stops.
        assertThat(worst).isLessThan(0.003);
    }

    private static List<FloorPoint> attackers(PlayedScene scene, double time) {
        return scene.at(time).people().stream()
                .filter(p -> scene.attackers().contains(p.person().id()))
                .map(PersonState::position)
                .toList();
    }
}
