package floorgauge.vision.kit;

import floorgauge.court.track.Team;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Sorts the tracks of a film into two kits and the rest. Two medoids are chosen, of all pairs of tracks the pair with the
 * least sum of distances from every track to the nearer one, tracks weighted by how long they were seen and capped so that
 * an official's odd kit can't take a medoid for itself (L. Kaufman and P. Rousseeuw, "Finding groups in data", 1990,
 * chapter 2, partitioning around medoids). The lighter kit is {@link Team#FIRST}. Nothing random.
 */
public final class TeamSorter {

    /** A kit farther than this from both teams' is neither's; also the cap on a distance. Hellinger distance. */
    private static final double OUTSIDE = 0.6;

    /** Tracks beyond this number don't take part in the choice of medoids, the longest first. */
    private static final int MOST_MEDOIDS = 60;

    /** Hellinger distance that counts as one nat in the membership's probability. */
    private static final double NAT = 0.05;

    private TeamSorter() {}

    /**
     * Where a track belongs.
     *
     * @param probability that this is right, 0 to 1
     */
    public record Membership(Team team, double probability) {}

    /**
     * The tracks sorted.
     *
     * @param memberships one for each track
     * @param first the first team's kit; empty where there were too few tracks
     * @param second the second team's
     */
    public record Sorted(List<Membership> memberships, Optional<KitColour> first, Optional<KitColour> second) {

        public Sorted {
            memberships = List.copyOf(memberships);
        }
    }

    /**
     * Sorts tracks by kit.
     *
     * @param kits one for each track, empty where none was seen
     * @param weights how much each track was seen, at least 0
     * @param playersPerSide how many each side has, where known: then nobody is left out who was seen clearly
     */
    public static Sorted sort(List<Optional<KitColour>> kits, double[] weights, OptionalInt playersPerSide) {
        List<Integer> known = new ArrayList<>();
        for (int i = 0; i < kits.size(); i++) {
            if (kits.get(i).isPresent()) {
                known.add(i);
            }
        }
        known.sort((a, b) -> weights[a] != weights[b] ? Double.compare(weights[b], weights[a]) : a - b);
        List<Integer> candidates = known.subList(0, Math.min(MOST_MEDOIDS, known.size()));
        if (candidates.size() < 2) {
            return new Sorted(
                    kits.stream().map(k -> new Membership(Team.UNKNOWN, 0)).toList(),
                    Optional.empty(),
                    Optional.empty());
        }
        KitColour[] medoids = medoids(kits, weights, candidates);
        List<Membership> result = new ArrayList<>();
        for (Optional<KitColour> kit : kits) {
            result.add(kit.map(k -> membership(k, medoids, playersPerSide.isPresent()))
                    .orElse(new Membership(Team.UNKNOWN, 0)));
        }
        return new Sorted(result, Optional.of(medoids[0]), Optional.of(medoids[1]));
    }

    private static KitColour[] medoids(List<Optional<KitColour>> kits, double[] weights, List<Integer> candidates) {
        double least = Double.POSITIVE_INFINITY;
        KitColour[] best = new KitColour[2];
        for (int i = 0; i < candidates.size(); i++) {
            for (int k = i + 1; k < candidates.size(); k++) {
                KitColour one = kits.get(candidates.get(i)).orElseThrow();
                KitColour other = kits.get(candidates.get(k)).orElseThrow();
                double sum = 0;
                for (int c : candidates) {
                    KitColour kit = kits.get(c).orElseThrow();
                    sum += weights[c] * Math.min(OUTSIDE, Math.min(kit.distanceTo(one), kit.distanceTo(other)));
                }
                if (sum < least) {
                    least = sum;
                    best[0] = one;
                    best[1] = other;
                }
            }
        }
        if (best[0].meanLab()[0] < best[1].meanLab()[0]) {
            return new KitColour[] {best[1], best[0]};
        }
        return best;
    }

    private static Membership membership(KitColour kit, KitColour[] medoids, boolean closed) {
        double first = kit.distanceTo(medoids[0]);
        double second = kit.distanceTo(medoids[1]);
        double outside = closed ? Double.POSITIVE_INFINITY : OUTSIDE;
        double a = Math.exp((Math.min(first, second) - first) / NAT);
        double b = Math.exp((Math.min(first, second) - second) / NAT);
        double none = Math.exp((Math.min(first, second) - outside) / NAT);
        double total = a + b + none;
        if (none >= Math.max(a, b)) {
            return new Membership(Team.UNKNOWN, none / total);
        }
        return a >= b ? new Membership(Team.FIRST, a / total) : new Membership(Team.SECOND, b / total);
    }
}
