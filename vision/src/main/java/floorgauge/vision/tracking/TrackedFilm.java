package floorgauge.vision.tracking;

import floorgauge.court.track.FilmTracks;
import java.util.Objects;

/**
 * What tracking a film gives.
 *
 * @param tracks everyone on the floor
 * @param kits the teams' colours
 * @param staticCamera whether the camera stood still throughout, so that a background helped
 */
public record TrackedFilm(FilmTracks tracks, TeamKits kits, boolean staticCamera) {

    public TrackedFilm {
        Objects.requireNonNull(tracks, "tracks");
        Objects.requireNonNull(kits, "kits");
    }
}
