package floorgauge.vision.tracking;

import floorgauge.vision.kit.KitColour;
import floorgauge.vision.kit.KitLikelihood;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Gives every frame's sightings to the tracks once more, now that the tracks' futures are known: each track expects a person
 * where its other sightings, before and after, say, and the frame's sightings are given out by the cheapest assignment. A
 * sighting that no track expects is left out, one that was left out may come in. (R. Streit and T. Luginbuhl,
 * "Probabilistic multi-hypothesis tracking", 1995, with hard assignments.)
 */
final class TrackRefiner {

    private static final int ROUNDS = 2;

    private final FloorMotion motion;
    private final KitLikelihood kits;
    private final SortedMap<Double, List<Sighting>> looks;
    private final double falseAlarmDensity;

    /**
     * @param looks everyone seen in each frame looked at, by time
     * @param falseAlarmDensity per square metre and frame
     */
    TrackRefiner(
            FloorMotion motion, KitLikelihood kits, SortedMap<Double, List<Sighting>> looks, double falseAlarmDensity) {
        this.motion = motion;
        this.kits = kits;
        this.looks = looks;
        this.falseAlarmDensity = falseAlarmDensity;
    }

    /** The tracks with their sightings given out anew; one that is left without any goes. */
    List<Tracklet> refined(List<Tracklet> tracks) {
        List<Tracklet> result = tracks;
        for (int i = 0; i < ROUNDS; i++) {
            result = round(result);
        }
        return result;
    }

    private List<Tracklet> round(List<Tracklet> tracks) {
        List<Expectation> expected =
                tracks.stream().map(t -> new Expectation(t, motion)).toList();
        List<List<Sighting>> given = new ArrayList<>();
        tracks.forEach(t -> given.add(new ArrayList<>()));
        for (Map.Entry<Double, List<Sighting>> look : looks.entrySet()) {
            double time = look.getKey();
            List<Integer> here = new ArrayList<>();
            for (int i = 0; i < tracks.size(); i++) {
                if (tracks.get(i).startSeconds() <= time
                        && time <= tracks.get(i).endSeconds()) {
                    here.add(i);
                }
            }
            int[] found = assign(expected, here, time, look.getValue());
            for (int k = 0; k < found.length; k++) {
                if (found[k] != Assignment.NONE) {
                    given.get(here.get(k)).add(look.getValue().get(found[k]));
                }
            }
        }
        return given.stream().filter(g -> !g.isEmpty()).map(Tracklet::new).toList();
    }

    private int[] assign(List<Expectation> expected, List<Integer> here, double time, List<Sighting> seen) {
        Assignment assignment = new Assignment(here.size(), seen.size(), 0);
        for (int k = 0; k < here.size(); k++) {
            Expectation track = expected.get(here.get(k));
            FloorState state = track.at(time);
            for (int j = 0; j < seen.size(); j++) {
                double ratio = motion.innovation(state, seen.get(j).foot()).logDensity() - Math.log(falseAlarmDensity);
                if (track.kit.isPresent() && seen.get(j).kit().isPresent()) {
                    ratio += kits.logRatio(track.kit.get(), seen.get(j).kit().get());
                }
                if (ratio > 0) {
                    assignment.allow(k, j, -ratio);
                }
            }
        }
        return assignment.solve();
    }

    /** Where a track's person is at a time, from all its sightings but the one of that time. */
    private static final class Expectation {
        private final FloorMotion motion;
        private final Optional<KitColour> kit;
        private final TreeMap<Double, FloorState> forward = new TreeMap<>();
        private final TreeMap<Double, FloorState> backward = new TreeMap<>();
        private final List<Sighting> sightings;

        Expectation(Tracklet track, FloorMotion motion) {
            this.motion = motion;
            this.sightings = track.sightings();
            this.kit = track.kit(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
            filter(forward, 0, 1);
            filter(backward, sightings.size() - 1, -1);
        }

        private void filter(TreeMap<Double, FloorState> states, int first, int step) {
            FloorState state = motion.start(sightings.get(first).foot());
            double time = sightings.get(first).timeSeconds();
            states.put(time, state);
            for (int i = first + step; i >= 0 && i < sightings.size(); i += step) {
                double next = sightings.get(i).timeSeconds();
                state = motion.updateRobustly(
                        motion.predict(state, Math.abs(next - time)),
                        sightings.get(i).foot());
                time = next;
                states.put(time, state);
            }
        }

        FloorState at(double time) {
            Optional<FloorState> before = Optional.ofNullable(forward.lowerEntry(time))
                    .map(e -> motion.predict(e.getValue(), time - e.getKey()));
            Optional<FloorState> after = Optional.ofNullable(backward.higherEntry(time))
                    .map(e -> Tracklet.reversed(motion.predict(e.getValue(), e.getKey() - time)));
            if (before.isPresent() && after.isPresent()) {
                return StateComparison.fuse(before.get(), after.get());
            }
            return before.or(() -> after)
                    .orElseGet(() -> motion.start(sightings.get(0).foot()));
        }
    }
}
