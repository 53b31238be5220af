package floorgauge.vision.ball;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FlightFitterTest {

    private static final long SEED = 11;

    private final Stand stand = new Stand();
    private final FlightFitter fitter = new FlightFitter(stand.camera());

    /** From (5, -3, 1.4) at (6, 4, 3) m/s. */
    private List<BallPoint> flight(double noisePixels, Random random, int count) {
        List<BallPoint> points = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            double s = k / 15.0;
            double z = 1.4 + 3 * s - Flight.GRAVITY * s * s / 2;
            double dx = noisePixels * random.nextGaussian();
            double dy = noisePixels * random.nextGaussian();
            points.add(new BallPoint(k, 2L * k, s, stand.sighting(5 + 6 * s, -3 + 4 * s, z, dx, dy, 0.9)));
        }
        return points;
    }

    private static FlightEnd end(double time, double x, double y, double z) {
        return new FlightEnd(time, new FloorEstimate(new FloorPoint(x, y), FloorCovariance.isotropic(0.3)), z);
    }

    @Test
    void anExactFlightComesBack() {
        Flight flight = fitter.fit(flight(0, new Random(SEED), 9), Optional.empty(), Optional.empty())
                .orElseThrow();
        FloorEstimate at = flight.floorAt(0.4);
        assertThat(at.mean().distanceTo(new FloorPoint(7.4, -1.4))).isLessThan(0.05);
        assertThat(flight.heightAt(0.4)).isCloseTo(1.4 + 1.2 - Flight.GRAVITY * 0.08, within(0.05));
        assertThat(flight.pixelError()).isLessThan(0.5);
    }

    @Test
    void knownEndsHoldANoisyFlightInPlace() {
        Random random = new Random(SEED);
        double squared = 0;
        int times = 60;
        for (int i = 0; i < times; i++) {
            Flight flight = fitter.fit(
                            flight(1, random, 7),
                            Optional.of(end(-1 / 15.0, 4.6 + 0.3 * random.nextGaussian(), -3.27, 1.2)),
                            Optional.of(end(7 / 15.0, 7.8, -1.13 + 0.3 * random.nextGaussian(), 1.7)))
                    .orElseThrow(() -> new AssertionError("seed " + SEED));
            double d = flight.floorAt(0.2).mean().distanceTo(new FloorPoint(6.2, -2.2));
            squared += d * d / times;
        }
        assertThat(Math.sqrt(squared)).as("seed " + SEED).isLessThan(0.3);
    }

    @Test
    void aBouncePassIsNoSingleFlight() {
        List<BallPoint> points = new ArrayList<>();
        for (int k = 0; k < 9; k++) {
            double s = k / 15.0;
            double z = 0.12 + 4 * Math.abs(s - 0.27);
            points.add(new BallPoint(k, 2L * k, s, stand.sighting(5 + 6 * s, -3, z, 0, 0, 0.9)));
        }
        assertThat(fitter.fit(points, Optional.empty(), Optional.empty())).isEmpty();
    }
}
