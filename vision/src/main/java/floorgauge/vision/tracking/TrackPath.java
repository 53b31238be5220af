package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorPoint;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;

/** Where a track's person was: straight lines between the sightings. */
final class TrackPath {

    private final TreeMap<Double, FloorPoint> points = new TreeMap<>();

    TrackPath(Tracklet track) {
        track.sightings().forEach(s -> points.put(s.timeSeconds(), s.foot().mean()));
    }

    SortedSet<Double> times() {
        return points.navigableKeySet();
    }

    boolean overlaps(TrackPath other) {
        return points.firstKey() <= other.points.lastKey() && other.points.firstKey() <= points.lastKey();
    }

    boolean covers(double seconds) {
        return seconds >= points.firstKey() && seconds <= points.lastKey();
    }

    /** At an instant that the path covers. */
    FloorPoint at(double seconds) {
        Map.Entry<Double, FloorPoint> a = points.floorEntry(seconds);
        Map.Entry<Double, FloorPoint> b = points.ceilingEntry(seconds);
        double span = b.getKey() - a.getKey();
        double share = span > 0 ? (seconds - a.getKey()) / span : 0;
        return new FloorPoint(
                a.getValue().xMetres()
                        + share * (b.getValue().xMetres() - a.getValue().xMetres()),
                a.getValue().yMetres()
                        + share * (b.getValue().yMetres() - a.getValue().yMetres()));
    }
}
