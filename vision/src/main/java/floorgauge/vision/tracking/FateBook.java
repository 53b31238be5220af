package floorgauge.vision.tracking;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** Keeps for every sighting why it is in no track, stage by stage: the first reason stands. */
final class FateBook {

    private static final Comparator<DetectionFate> IN_TIME = Comparator.comparingDouble(DetectionFate::timeSeconds)
            .thenComparingDouble(f -> f.box().left())
            .thenComparingDouble(f -> f.box().top())
            .thenComparingDouble(f -> -f.score());

    private final Map<Sighting, Fate> reasons = new IdentityHashMap<>();

    /** A stage left out tracklets. */
    void left(List<Tracklet> before, List<Tracklet> after, Function<Tracklet, Fate> why) {
        Set<Sighting> kept = Collections.newSetFromMap(new IdentityHashMap<>());
        after.forEach(t -> kept.addAll(t.sightings()));
        for (Tracklet tracklet : before) {
            for (Sighting sighting : tracklet.sightings()) {
                if (!kept.contains(sighting)) {
                    reasons.putIfAbsent(sighting, why.apply(tracklet));
                }
            }
        }
    }

    /**
     * Every box's fate in order of time.
     *
     * @param seen all sightings
     * @param dropped boxes that never became sightings
     * @param tracks in order of their ids, from 1
     */
    List<DetectionFate> fates(Collection<List<Sighting>> seen, List<DetectionFate> dropped, List<Tracklet> tracks) {
        Map<Sighting, Integer> trackOf = new IdentityHashMap<>();
        for (int i = 0; i < tracks.size(); i++) {
            for (Sighting sighting : tracks.get(i).sightings()) {
                trackOf.put(sighting, i + 1);
            }
        }
        List<DetectionFate> fates = new ArrayList<>(dropped);
        for (List<Sighting> look : seen) {
            for (Sighting s : look) {
                int track = trackOf.getOrDefault(s, 0);
                Fate fate = track > 0 ? Fate.FOLLOWED : reasons.getOrDefault(s, Fate.SEEN_ONCE);
                s.observation()
                        .box()
                        .ifPresent(box -> fates.add(new DetectionFate(
                                s.frame(), s.timeSeconds(), box, s.observation().score(), fate, track)));
            }
        }
        fates.sort(IN_TIME);
        return fates;
    }
}
