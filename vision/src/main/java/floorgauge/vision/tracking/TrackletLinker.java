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
            for (int j = firstAfter(starts, end); j < starts.length && starts[j] - end <= longestGapSeconds; j++) {
                double c = cost.of(i, j);
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

    /** The chains as tracklets. */
    static List<Tracklet> joined(List<Tracklet> tracklets, List<List<Integer>> chains) {
        return chains.stream()
                .map(chain -> new Tracklet(chain.stream()
                        .flatMap(i -> tracklets.get(i).sightings().stream())
                        .toList()))
                .toList();
    }
}
