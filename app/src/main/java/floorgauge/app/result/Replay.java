package floorgauge.app.result;

import floorgauge.events.finding.Possession;
import floorgauge.events.finding.Trail;
import floorgauge.events.finding.TrailPoint;
import floorgauge.events.motion.MotionPrior;
import floorgauge.events.motion.MotionSmoother;
import floorgauge.events.motion.UniformClock;
import floorgauge.events.standards.Standards;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Everyone's smoothed way through a stretch of film, by the smoother that the measurements use. */
public final class Replay {

    /** Seen before and after the stretch, so that its ends are smoothed from both sides. */
    private static final double ROOM_SECONDS = 1.5;

    private static final MotionPrior PRIOR = MotionPrior.player(Standards.defaults());

    private Replay() {}

    /**
     * The ways of those in a possession between two times.
     *
     * @param tracks the film's table of tracks
     * @throws floorgauge.court.failure.MendableException where it cannot be read
     */
    public static List<Trail> of(Path tracks, Possession possession, double fromSeconds, double toSeconds) {
        TracksWindow window = new TracksWindow(tracks, fromSeconds - ROOM_SECONDS, toSeconds + ROOM_SECONDS);
        return of(window.places(), possession, fromSeconds, toSeconds);
    }

    /** The same from places that were read already. */
    public static List<Trail> of(
            List<TracksWindow.Place> places, Possession possession, double fromSeconds, double toSeconds) {
        Map<Integer, MotionSmoother> smoothers = new TreeMap<>();
        Map<Integer, List<TrailPoint>> points = new TreeMap<>();
        for (TracksWindow.Place place : places) {
            int id = place.trackId();
            boolean plays = possession.attackers().contains(id)
                    || possession.defenders().contains(id);
            boolean near = place.timeSeconds() >= fromSeconds - ROOM_SECONDS
                    && place.timeSeconds() <= toSeconds + ROOM_SECONDS;
            if (plays && near && !place.predicted()) {
                List<TrailPoint> way = points.computeIfAbsent(id, i -> new ArrayList<>());
                smoothers
                        .computeIfAbsent(
                                id,
                                i -> new MotionSmoother(
                                        PRIOR,
                                        s -> way.add(new TrailPoint(
                                                UniformClock.seconds(s.tick()), s.estimate(), s.speed()))))
                        .observe(place.timeSeconds(), place.foot());
            }
        }
        smoothers.values().forEach(MotionSmoother::finish);
        List<Trail> trails = new ArrayList<>();
        points.forEach((id, way) -> {
            way.removeIf(p -> p.timeSeconds() < fromSeconds - 1e-9 || p.timeSeconds() > toSeconds + 1e-9);
            if (!way.isEmpty()) {
                trails.add(new Trail(id, possession.attackers().contains(id), way));
            }
        });
        return trails;
    }
}
