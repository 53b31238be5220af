package floorgauge.app.result;

import floorgauge.court.track.FilmTracks;
import floorgauge.events.finding.Findings;
import java.util.Objects;

/**
 * All that is known of one film when its results are written.
 *
 * @param film which
 * @param settings with what it was measured
 * @param court where the court lies in the picture
 * @param tracks everyone on the floor
 * @param findings what was measured
 */
public record MeasuredFilm(
        FilmSource film, RunSettings settings, CourtReading court, FilmTracks tracks, Findings findings) {

    public MeasuredFilm {
        Objects.requireNonNull(film, "film");
        Objects.requireNonNull(settings, "settings");
        Objects.requireNonNull(court, "court");
        Objects.requireNonNull(tracks, "tracks");
        Objects.requireNonNull(findings, "findings");
    }
}
