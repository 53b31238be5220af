package floorgauge.events;

import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.IdentityDoubt;
import floorgauge.court.track.PlayerTrack;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.script.Script;
import floorgauge.events.standards.Standards;
import java.util.ArrayList;
import java.util.List;

/** Measures the tracks of a film: tracks in, findings out. */
public final class Measurement {

    private Measurement() {}

    /**
     * Measures a whole film. A film without players, or of players who cannot be told apart by team, gives no possession
     * and says so.
     *
     * @param tracks of the film
     * @param rules the court's sizes
     * @param standards what the team is held to
     */
    public static Findings measure(FilmTracks tracks, RuleSet rules, Standards standards) {
        return measure(tracks, rules, standards, List.of());
    }

    /**
     * Measures a whole film and holds each possession against the script that it resembles most.
     *
     * @param scripts what the team may have meant to run; none gives what {@link #measure(FilmTracks, RuleSet, Standards)} gives
     */
    public static Findings measure(FilmTracks tracks, RuleSet rules, Standards standards, List<Script> scripts) {
        List<PossessionFindings> possessions = new ArrayList<>();
        MeasurementStream stream = new MeasurementStream(rules, standards, scripts, possessions::add);
        for (PlayerTrack track : tracks.players()) {
            for (IdentityDoubt doubt : track.doubts()) {
                stream.doubt(track.id(), doubt);
            }
        }
        tracks.frames().forEach(stream::accept);
        List<NotSeen> notSeen = stream.finish();
        return new Findings(possessions, notSeen);
    }
}
