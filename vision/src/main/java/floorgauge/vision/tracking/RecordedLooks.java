package floorgauge.vision.tracking;

import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What the networks saw in a film, so that the tracks can be made again with other settings and without the networks. Of a film's
 * size in memory: for measuring, not for use.
 */
public final class RecordedLooks implements LookTaker {

    private final List<Look> looks = new ArrayList<>();
    private final SortedMap<Long, Double> frames = new TreeMap<>();

    @Override
    public void passed(long frame, double timeSeconds) {
        frames.put(frame, timeSeconds);
    }

    @Override
    public void looked(long frame, double timeSeconds, List<Sighting> seen) {
        frames.put(frame, timeSeconds);
        looks.add(new Look(frame, timeSeconds, seen, List.of()));
    }

    /** Tracks made again have no use for them. */
    @Override
    public void dropped(List<DetectionFate> boxes) {
        // They change no track.
    }

    /** How many people were seen in all. */
    public long sightings() {
        return looks.stream().mapToLong(l -> l.seen().size()).sum();
    }

    /** The tracks of the people seen; without the ball. */
    public TrackedFilm tracked(TrackingSettings settings, RuleSet rules) {
        OfflineTracker tracker = new OfflineTracker(settings, FilmTracker.CONFIDENT, rules);
        frames.forEach(tracker::passed);
        looks.forEach(look -> tracker.looked(look.frame(), look.timeSeconds(), look.seen()));
        return tracker.tracked(false);
    }
}
