package floorgauge.vision.tracking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Joins tracklets with the whole film in view: every tracklet has at most one successor and one predecessor, and the sum of
 * the links' costs is least. That is the network flow of L. Zhang, Y. Li and R. Nevatia, "Global data association for
 * multi-object tracking using network flows", 2008, with every tracklet kept, which is an assignment problem.
 */
final class TrackletLinker {

    private TrackletLinker() {}

    /**
     * The successor of each tracklet, or {@link Assignment#NONE}.
     *
     * @param tracklets in order of their starts
     */
    static int[] successors(List<Tracklet> tracklets, LinkCost cost, double longestGapSeconds) {
        double[] starts = tracklets.stream().mapToDouble(Tracklet::startSeconds).toArray();
        Assignment assignment = new Assignment(tracklets.size(), tracklets.size(), 0);
        for (int i = 0; i < tracklets.size(); i++) {
            double end = tracklets.get(i).endSeconds();
            for (int j = firstAfter(starts, end - LinkCost.LONGEST_OVERLAP_SECONDS);
                    j < starts.length && starts[j] - end <= longestGapSeconds;
                    j++) {
                double c = i == j ? Double.POSITIVE_INFINITY : cost.of(i, j);
                if (c < 0) {
                    assignment.allow(i, j, c);
                }
            }
        }
        return assignment.solve();
    }

    private static int firstAfter(double[] sorted, double value) {
        int at = Arrays.binarySearch(sorted, value);
        int i = at >= 0 ? at : -at - 1;
        while (i < sorted.length && sorted[i] <= value) {
            i++;
        }
        return i;
    }

    /** The tracklets along each chain of successors, chains in order of their starts. */
    static List<List<Integer>> chains(int[] successors) {
        boolean[] hasPredecessor = new boolean[successors.length];
        for (int successor : successors) {
            if (successor != Assignment.NONE) {
                hasPredecessor[successor] = true;
            }
        }
        List<List<Integer>> chains = new ArrayList<>();
        for (int first = 0; first < successors.length; first++) {
            if (!hasPredecessor[first]) {
                List<Integer> chain = new ArrayList<>();
                for (int i = first; i != Assignment.NONE; i = successors[i]) {
                    chain.add(i);
                }
                chains.add(chain);
            }
        }
        return chains;
    }

    /** The chains as tracklets; of pieces that overlap the earlier counts up to the start of the later. */
    static List<Tracklet> joined(List<Tracklet> tracklets, List<List<Integer>> chains) {
        return chains.stream().map(chain -> joinedChain(tracklets, chain)).toList();
    }

    private static Tracklet joinedChain(List<Tracklet> tracklets, List<Integer> chain) {
        List<Sighting> sightings = new ArrayList<>();
        for (int k = 0; k < chain.size(); k++) {
            double until =
                    k + 1 < chain.size() ? tracklets.get(chain.get(k + 1)).startSeconds() : Double.POSITIVE_INFINITY;
            tracklets.get(chain.get(k)).before(until).ifPresent(t -> sightings.addAll(t.sightings()));
        }
        return new Tracklet(sightings);
    }
}
