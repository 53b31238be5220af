package floorgauge.vision.tracking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Cuts two tracklets where they met, at the instant at which an exchange was the likeliest, so that the linker can join the
 * four ends with what is known before and after.
 */
final class EncounterCutter {

    /** Encounters of the same two with less time between are one. */
    private static final double SAME_ENCOUNTER_SECONDS = 0.7;

    private EncounterCutter() {}

    private record Pair(int one, int other) {}

    static List<Tracklet> cut(List<Tracklet> tracklets, List<Encounter> encounters) {
        List<TreeSet<Double>> cuts = new ArrayList<>();
        tracklets.forEach(t -> cuts.add(new TreeSet<>()));
        for (Encounter worst : worstOfEach(encounters)) {
            cuts.get(worst.one()).add(worst.timeSeconds());
            cuts.get(worst.other()).add(worst.timeSeconds());
        }
        List<Tracklet> pieces = new ArrayList<>();
        for (int i = 0; i < tracklets.size(); i++) {
            pieces.addAll(tracklets.get(i).cutAt(List.copyOf(cuts.get(i))));
        }
        pieces.sort(Comparator.comparingDouble(Tracklet::startSeconds));
        return pieces;
    }

    private static List<Encounter> worstOfEach(List<Encounter> encounters) {
        SortedMap<Pair, List<Encounter>> ofPair =
                new TreeMap<>(Comparator.comparingInt(Pair::one).thenComparingInt(Pair::other));
        for (Encounter e : encounters) {
            ofPair.computeIfAbsent(new Pair(e.one(), e.other()), p -> new ArrayList<>())
                    .add(e);
        }
        List<Encounter> worst = new ArrayList<>();
        for (List<Encounter> meetings : ofPair.values()) {
            Encounter lowest = null;
            double last = Double.NEGATIVE_INFINITY;
            for (Encounter e : meetings) {
                if (lowest != null && e.timeSeconds() - last > SAME_ENCOUNTER_SECONDS) {
                    worst.add(lowest);
                    lowest = null;
                }
                if (lowest == null || e.margin() < lowest.margin()) {
                    lowest = e;
                }
                last = e.timeSeconds();
            }
            worst.add(lowest);
        }
        return worst;
    }
}
