package floorgauge.vision.tracking;

import floorgauge.court.track.FilmTracks;
import java.util.List;
import java.util.Objects;

/**
 * What tracking a film gives.
 *
 * @param tracks everyone on the floor
 * @param kits the teams' colours
 * @param staticCamera whether the camera stood still throughout, so that a background helped
 * @param fates what became of every box that the detector gave, in order of time
 */
public record TrackedFilm(FilmTracks tracks, TeamKits kits, boolean staticCamera, List<DetectionFate> fates) {

    public TrackedFilm {
        Objects.requireNonNull(tracks, "tracks");
        Objects.requireNonNull(kits, "kits");
        fates = List.copyOf(fates);
    }

    /** Tracks of which no box is known. */
    public TrackedFilm(FilmTracks tracks, TeamKits kits, boolean staticCamera) {
        this(tracks, kits, staticCamera, List.of());
    }
}
