package floorgauge.vision.tracking;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds the pairs of links that could nearly as well have been crossed. Crossing costs D nats more than the links as they
 * are; with nothing known beforehand the tracks were exchanged with probability 1 / (1 + e^D).
 */
final class ExchangeFinder {

    /** Below this the two are told apart. */
    private static final double LEAST_PROBABILITY = 0.01;

    private ExchangeFinder() {}

    private record Link(int before, int after, double from, double to) {}

    static List<Exchange> find(List<Tracklet> tracklets, int[] successors, LinkCost cost) {
        List<Link> links = new ArrayList<>();
        for (int i = 0; i < successors.length; i++) {
            if (successors[i] != Assignment.NONE) {
                double from = tracklets.get(i).endSeconds();
                links.add(new Link(
                        i, successors[i], from, tracklets.get(successors[i]).startSeconds()));
            }
        }
        links.sort(java.util.Comparator.comparingDouble(Link::from).thenComparingInt(Link::before));
        double longest =
                links.stream().mapToDouble(l -> l.to() - l.from()).max().orElse(0);
        List<Exchange> exchanges = new ArrayList<>();
        for (int i = 0; i < links.size(); i++) {
            for (int k = i + 1;
                    k < links.size() && links.get(k).from() <= links.get(i).from() + longest;
                    k++) {
                addIfLikely(exchanges, tracklets, cost, links.get(i), links.get(k));
            }
        }
        return exchanges;
    }

    private static void addIfLikely(
            List<Exchange> exchanges, List<Tracklet> tracklets, LinkCost cost, Link one, Link other) {
        double crossed = cost.of(one.before(), other.after()) + cost.of(other.before(), one.after());
        double asIs = cost.of(one.before(), one.after()) + cost.of(other.before(), other.after());
        double probability = 1 / (1 + Math.exp(crossed - asIs));
        if (probability >= LEAST_PROBABILITY) {
            exchanges.add(new Exchange(
                    last(tracklets.get(one.before())),
                    last(tracklets.get(other.before())),
                    Math.min(one.from(), other.from()),
                    Math.max(one.to(), other.to()),
                    probability));
        }
    }

    private static Sighting last(Tracklet tracklet) {
        return tracklet.sightings().get(tracklet.sightings().size() - 1);
    }
}
