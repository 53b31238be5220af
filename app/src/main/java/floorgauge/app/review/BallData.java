package floorgauge.app.review;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.BallObservation;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/** The ball through a stretch of film, as it was seen: between two sightings it is not guessed. */
final class BallData {

    private final NavigableMap<Double, BallObservation> byTime = new TreeMap<>();

    BallData(List<BallObservation> ball) {
        ball.forEach(b -> byTime.put(b.timeSeconds(), b));
    }

    /**
     * Samples at even steps: place and its standard error in metres, height in metres and holder's track, null where not known;
     * null where nothing was seen within a step.
     */
    void sample(ArrayNode samples, double fromSeconds, double stepSeconds, int count) {
        for (int i = 0; i < count; i++) {
            Optional<BallObservation> seen = near(fromSeconds + i * stepSeconds, stepSeconds);
            if (seen.isEmpty()) {
                samples.addNull();
                continue;
            }
            BallObservation ball = seen.get();
            ArrayNode numbers = samples.addArray()
                    .add(rounded(ball.floor().mean().xMetres()))
                    .add(rounded(ball.floor().mean().yMetres()))
                    .add(rounded(ball.floor().covariance().standardErrorMetres()));
            if (ball.heightMetres().isPresent()) {
                numbers.add(rounded(ball.heightMetres().getAsDouble()));
            } else {
                numbers.addNull();
            }
            if (ball.heldBy().isPresent()) {
                numbers.add(ball.heldBy().getAsInt());
            } else {
                numbers.addNull();
            }
        }
    }

    /** Where it is in the picture of a time, pixels; nothing where it was not seen there. */
    void picture(ObjectNode frame, double timeSeconds) {
        Optional<PixelPoint> place =
                Optional.ofNullable(byTime.get(timeSeconds)).flatMap(BallObservation::position);
        place.ifPresent(p -> frame.putArray("ball").add(rounded(p.x())).add(rounded(p.y())));
    }

    private Optional<BallObservation> near(double time, double step) {
        Map.Entry<Double, BallObservation> below = byTime.floorEntry(time);
        Map.Entry<Double, BallObservation> above = byTime.ceilingEntry(time);
        boolean later = below == null || (above != null && above.getKey() - time < time - below.getKey());
        return Optional.ofNullable(later ? above : below)
                .filter(e -> Math.abs(e.getKey() - time) <= step + 1e-9)
                .map(Map.Entry::getValue);
    }

    private static double rounded(double value) {
        return Math.round(value * 1000) / 1000.0;
    }
}
