package floorgauge.vision.tracking;

import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Pose;
import floorgauge.vision.body.PoseOverlap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Two boxes about one person: the detector's own suppression leaves both where one holds the upper body only. Their poses
 * are the same, and the smaller box lies in the larger.
 */
final class Duplicates {

    /** Joints as close as this are one person's. */
    private static final double SAME_POSE = 0.5;

    /** Share of the smaller box that lies in the larger. */
    private static final double MOSTLY_INSIDE = 0.7;

    private Duplicates() {}

    /**
     * Without them, in the same order.
     *
     * @param sightings best seen first
     */
    static List<Sighting> removed(List<Sighting> sightings) {
        List<Sighting> kept = new ArrayList<>();
        for (Sighting candidate : sightings) {
            if (kept.stream().noneMatch(k -> isSame(k, candidate))) {
                kept.add(candidate);
            }
        }
        return kept;
    }

    private static boolean isSame(Sighting one, Sighting other) {
        Optional<ImageBox> a = one.observation().box();
        Optional<ImageBox> b = other.observation().box();
        Optional<Pose> p = one.observation().pose();
        Optional<Pose> q = other.observation().pose();
        if (a.isEmpty() || b.isEmpty() || p.isEmpty() || q.isEmpty()) {
            return false;
        }
        double smaller = Math.min(a.get().area(), b.get().area());
        double larger = Math.max(a.get().area(), b.get().area());
        return a.get().intersectionArea(b.get()) > MOSTLY_INSIDE * smaller
                && PoseOverlap.of(p.get(), q.get(), larger) > SAME_POSE;
    }
}
