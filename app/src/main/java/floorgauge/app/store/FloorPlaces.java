package floorgauge.app.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Where the tracks of a film were, for finding a track or a finding again after the film was measured anew and ids changed.
 *
 * @param byTrack places by time, by track id
 */
record FloorPlaces(Map<Integer, NavigableMap<Double, TimedPlace>> byTrack) {

    /** Two readings of one place at one moment lie within this: some body widths, far below a stride's doubt. */
    static final double SAME_PLACE_METRES = 1.2;

    private static final double SAME_MOMENT_SECONDS = 0.25;
    private static final int MOST_PLACES = 12;

    static final FloorPlaces NONE = new FloorPlaces(Map.of());

    /** A few places of a track between two times, evenly spread; empty where it was not there. */
    List<TimedPlace> some(int trackId, double fromSeconds, double toSeconds) {
        NavigableMap<Double, TimedPlace> track = byTrack.getOrDefault(trackId, new TreeMap<>());
        List<TimedPlace> all = new ArrayList<>(track.subMap(fromSeconds, true, Math.max(fromSeconds, toSeconds), true)
                .values());
        if (all.size() <= MOST_PLACES) {
            return all;
        }
        List<TimedPlace> some = new ArrayList<>();
        for (int i = 0; i < MOST_PLACES; i++) {
            some.add(all.get((int) Math.round(i * (all.size() - 1) / (double) (MOST_PLACES - 1))));
        }
        return some;
    }

    /** Mean distance between earlier places and those of a track at the same moments; empty where less than half were met. */
    OptionalDouble distance(List<TimedPlace> earlier, int trackId) {
        NavigableMap<Double, TimedPlace> track = byTrack.get(trackId);
        if (track == null || earlier.isEmpty()) {
            return OptionalDouble.empty();
        }
        double sum = 0;
        int met = 0;
        for (TimedPlace place : earlier) {
            Map.Entry<Double, TimedPlace> below = track.floorEntry(place.seconds());
            Map.Entry<Double, TimedPlace> above = track.ceilingEntry(place.seconds());
            TimedPlace near = nearer(below, above, place.seconds());
            if (near != null && Math.abs(near.seconds() - place.seconds()) <= SAME_MOMENT_SECONDS) {
                sum += near.distanceTo(place);
                met++;
            }
        }
        return 2 * met >= earlier.size() && met > 0 ? OptionalDouble.of(sum / met) : OptionalDouble.empty();
    }

    private static TimedPlace nearer(
            Map.Entry<Double, TimedPlace> below, Map.Entry<Double, TimedPlace> above, double time) {
        if (below == null || above == null) {
            return below != null ? below.getValue() : above != null ? above.getValue() : null;
        }
        return time - below.getKey() <= above.getKey() - time ? below.getValue() : above.getValue();
    }
}
