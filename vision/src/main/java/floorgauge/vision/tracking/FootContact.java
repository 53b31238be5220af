package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.track.Body;
import floorgauge.court.track.PlayerObservation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Whether a foot is planted, from how far its ankle's place on the floor moved since the look before and till the look
 * after. A planted foot rests; a swinging one is twice as fast as the body. With the displacement d over the time t, and its
 * standard deviation s along the way, the foot rests with probability Phi((v t - d) / s), v being the fastest that counts as
 * rest. Left and right are told apart by whichever pairing moves less, since the pose network changes them over.
 */
final class FootContact {

    /** Slower than this a foot rests, m/s; walking, a swinging foot is above 2 (common practice). */
    private static final double REST = 0.7;

    /** Looks farther apart than this say nothing of a step. */
    private static final double LONGEST_SECONDS = 0.25;

    private FootContact() {}

    /** The observations of one track, in order of time, with the probability that a foot is planted where it can be told. */
    static List<PlayerObservation> told(List<PlayerObservation> track) {
        List<PlayerObservation> seen = track.stream()
                .filter(o -> o.body().leftAnkle().isPresent()
                        && o.body().rightAnkle().isPresent())
                .toList();
        List<PlayerObservation> result = new ArrayList<>();
        int at = 0;
        for (PlayerObservation o : track) {
            if (at < seen.size() && seen.get(at) == o) {
                Optional<PlayerObservation> before = neighbour(seen, at - 1, o);
                Optional<PlayerObservation> after = neighbour(seen, at + 1, o);
                result.add(withContact(o, before, after));
                at++;
            } else {
                result.add(o);
            }
        }
        return result;
    }

    private static Optional<PlayerObservation> neighbour(List<PlayerObservation> seen, int at, PlayerObservation o) {
        boolean there = at >= 0
                && at < seen.size()
                && Math.abs(seen.get(at).timeSeconds() - o.timeSeconds()) <= LONGEST_SECONDS;
        return there ? Optional.of(seen.get(at)) : Optional.empty();
    }

    private static PlayerObservation withContact(
            PlayerObservation o, Optional<PlayerObservation> before, Optional<PlayerObservation> after) {
        if (before.isEmpty() && after.isEmpty()) {
            return o;
        }
        double left = rest(o, Body::leftAnkle, before, after);
        double right = rest(o, Body::rightAnkle, before, after);
        Body b = o.body();
        Body body = new Body(
                b.leftAnkle(),
                b.rightAnkle(),
                b.facing(),
                b.stanceOverShoulders(),
                OptionalDouble.of(1 - (1 - left) * (1 - right)));
        return new PlayerObservation(
                o.frame(), o.timeSeconds(), o.foot(), o.source(), o.box(), o.pose(), body, o.score());
    }

    /** That the foot rests towards both neighbours, or the one there is. */
    private static double rest(
            PlayerObservation o,
            Function<Body, Optional<FloorEstimate>> foot,
            Optional<PlayerObservation> before,
            Optional<PlayerObservation> after) {
        FloorEstimate here = foot.apply(o.body()).orElseThrow();
        double probability = 1;
        for (Optional<PlayerObservation> other : List.of(before, after)) {
            if (other.isPresent()) {
                double seconds = Math.abs(other.get().timeSeconds() - o.timeSeconds());
                double toLeft = rest(here, other.get().body().leftAnkle().orElseThrow(), seconds);
                double toRight = rest(here, other.get().body().rightAnkle().orElseThrow(), seconds);
                probability = Math.min(probability, Math.max(toLeft, toRight));
            }
        }
        return probability;
    }

    private static double rest(FloorEstimate one, FloorEstimate other, double seconds) {
        double dx = other.mean().xMetres() - one.mean().xMetres();
        double dy = other.mean().yMetres() - one.mean().yMetres();
        double distance = Math.hypot(dx, dy);
        if (distance == 0) {
            return 1;
        }
        double variance =
                one.covariance().varianceAlong(dx, dy) + other.covariance().varianceAlong(dx, dy);
        double sigma = Math.max(Math.sqrt(variance), 1e-3);
        return normal((REST * seconds - distance) / sigma);
    }

    private static double normal(double z) {
        return 0.5 * org.hipparchus.special.Erf.erfc(-z / Math.sqrt(2));
    }
}
