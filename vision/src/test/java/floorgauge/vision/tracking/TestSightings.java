package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.Body;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.PlayerObservation;
import floorgauge.vision.kit.KitColour;
import floorgauge.vision.network.NumberBelief;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;

/** Sightings and tracklets made by hand, 12.5 a second. */
final class TestSightings {

    static final double STEP_SECONDS = 0.08;
    static final KitColour WHITE = kit(90, 0, 0);
    static final KitColour NAVY = kit(25, 5, -25);

    private TestSightings() {}

    private static KitColour kit(double l, double a, double b) {
        KitColour.Sampler sampler = new KitColour.Sampler();
        sampler.add(l, a, b);
        return sampler.kit();
    }

    static Sighting at(double seconds, FloorPoint p, Optional<KitColour> kit, OptionalDouble height) {
        FloorEstimate foot = new FloorEstimate(p, FloorCovariance.isotropic(0.1));
        return new Sighting(
                new PlayerObservation(
                        Math.round(seconds / STEP_SECONDS),
                        seconds,
                        foot,
                        FootSource.ANKLES,
                        Optional.empty(),
                        Optional.empty(),
                        Body.UNSEEN,
                        0.8),
                kit,
                OptionalDouble.empty(),
                height);
    }

    static Tracklet walk(
            double from,
            double to,
            DoubleFunction<FloorPoint> path,
            DoubleFunction<KitColour> kit,
            DoubleFunction<Double> height) {
        List<Sighting> sightings = new ArrayList<>();
        for (long i = Math.round(from / STEP_SECONDS); i * STEP_SECONDS < to; i++) {
            double t = i * STEP_SECONDS;
            sightings.add(at(t, path.apply(t), Optional.of(kit.apply(t)), OptionalDouble.of(height.apply(t))));
        }
        return new Tracklet(sightings);
    }

    /** A look at a jersey that is sure of a number to this degree; the rest is on none that is legible. */
    static NumberBelief belief(int number, double probability) {
        float[] p = new float[NumberBelief.NUMBERS + 1];
        p[number] = (float) probability;
        p[NumberBelief.NUMBERS] = (float) (1 - probability);
        return new NumberBelief(p);
    }
}
