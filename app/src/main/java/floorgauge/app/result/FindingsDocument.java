package floorgauge.app.result;

import floorgauge.court.track.Appearance;
import floorgauge.court.track.Team;
import floorgauge.events.finding.Findings;
import java.util.List;
import java.util.Objects;

/**
 * What {@code findings.json} holds of a film. Trails are not in it: they follow from {@code tracks.parquet}.
 *
 * @param run key of the run, see {@link RunSettings#keyFor}
 * @param film which
 * @param settings with what it was measured
 * @param court where the court lies in the picture; without a way from the floor to the picture
 * @param players the film's tracks, in order of id
 * @param findings with empty trails
 */
public record FindingsDocument(
        String run,
        FilmSource film,
        RunSettings settings,
        CourtReading court,
        List<PlayerSpan> players,
        Findings findings) {

    /**
     * A track of the film.
     *
     * @param id from 1
     * @param team by kit
     * @param teamProbability that the team is right
     * @param fromSeconds first seen
     * @param toSeconds last seen
     * @param appearance what he looks like
     */
    public record PlayerSpan(
            int id, Team team, double teamProbability, double fromSeconds, double toSeconds, Appearance appearance) {

        public PlayerSpan {
            Objects.requireNonNull(team, "team");
            Objects.requireNonNull(appearance, "appearance");
        }
    }

    public FindingsDocument {
        Objects.requireNonNull(run, "run");
        Objects.requireNonNull(film, "film");
        Objects.requireNonNull(settings, "settings");
        Objects.requireNonNull(court, "court");
        Objects.requireNonNull(findings, "findings");
        players = List.copyOf(players);
    }
}
