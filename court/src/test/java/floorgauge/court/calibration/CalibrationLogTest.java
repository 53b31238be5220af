package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CalibrationLogTest {

    private static CourtCalibration drawn(Random random) {
        double[] covariance = new double[FloorProjection.PARAMETERS * FloorProjection.PARAMETERS];
        for (int i = 0; i < FloorProjection.PARAMETERS; i++) {
            covariance[i * (FloorProjection.PARAMETERS + 1)] = random.nextDouble();
        }
        Homography homography = Homography.of(
                random.nextGaussian(), random.nextGaussian(), 7, random.nextGaussian(), 50, 3, 0, 1e-3, 1);
        return new CourtCalibration(
                RuleSet.nba(),
                CalibrationStatus.WEAK,
                "Carried for " + random.nextInt() + " s.",
                1280,
                720,
                Optional.of(new FloorProjection(homography, new Lens(640, 360, 734, 0.1 * random.nextDouble(), 0.01))),
                ProjectionCovariance.of(covariance),
                Coverage.around(
                        List.of(
                                new FloorPoint(random.nextDouble(), 0),
                                new FloorPoint(5, random.nextDouble()),
                                new FloorPoint(3, 4)),
                        1.5));
    }

    @Test
    void nothingIsBeforeTheFirst() {
        CalibrationLog log = new CalibrationLog();
        assertThat(log.size()).isZero();
        assertThat(log.atOrBefore(3)).isEqualTo(-1);
    }

    @Test
    void timeGoesOn() {
        CalibrationLog log = new CalibrationLog();
        CourtCalibration lost = CourtCalibration.none(RuleSet.fiba(), 1280, 720, "lost");
        log.add(1, lost);
        assertThatThrownBy(() -> log.add(1, lost)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> log.add(Double.NaN, lost)).isInstanceOf(IllegalArgumentException.class);
        assertThat(log.size()).isEqualTo(1);
    }

    @Test
    void whatIsReadEqualsWhatWasAddedInAnyOrder() {
        long seed = 5;
        Random random = new Random(seed);
        CalibrationLog log = new CalibrationLog();
        List<CourtCalibration> added = new java.util.ArrayList<>();
        for (int i = 0; i < 300; i++) {
            added.add(i % 7 == 0 ? CourtCalibration.none(RuleSet.fiba(), 1280, 720, "lost " + i) : drawn(random));
            log.add(0.04 * i, added.get(i));
        }
        for (int i = 299; i >= 0; i -= 3) {
            assertThat(log.read(i)).as("seed %d, picture %d", seed, i).isEqualTo(added.get(i));
            assertThat(log.status(i)).isEqualTo(added.get(i).status());
            assertThat(log.atOrBefore(0.04 * i)).isEqualTo(i);
            assertThat(log.atOrBefore(0.04 * i + 0.01)).isEqualTo(i);
        }
    }
}
