package floorgauge.app.store;

import floorgauge.app.result.TracksWindow;
import floorgauge.court.failure.MendableException;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** Reads where the tracks of a film were. */
final class FilmPlaces {

    /** The table of a results folder. */
    static final String FILE = "tracks.parquet";

    private static final double STEP_SECONDS = 0.2;

    private FilmPlaces() {}

    /** Five places a second and track; none where the table cannot be read, since places only help. */
    static FloorPlaces read(TracksWindow window) {
        Map<Integer, NavigableMap<Double, TimedPlace>> byTrack = new HashMap<>();
        try {
            for (TracksWindow.Place place : window.places()) {
                NavigableMap<Double, TimedPlace> track = byTrack.computeIfAbsent(place.trackId(), t -> new TreeMap<>());
                if (track.isEmpty() || place.timeSeconds() - track.lastKey() >= STEP_SECONDS) {
                    track.put(
                            place.timeSeconds(),
                            new TimedPlace(
                                    place.timeSeconds(),
                                    place.foot().mean().xMetres(),
                                    place.foot().mean().yMetres()));
                }
            }
        } catch (MendableException e) {
            return FloorPlaces.NONE;
        }
        return new FloorPlaces(byTrack);
    }
}
