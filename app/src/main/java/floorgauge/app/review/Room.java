package floorgauge.app.review;

import floorgauge.app.store.Films;
import floorgauge.app.store.Kept;
import floorgauge.app.store.Notes;
import floorgauge.app.store.Roster;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.StoredPossession;
import floorgauge.app.store.StoredTrack;
import floorgauge.app.store.Verdicts;
import io.javalin.http.Context;
import java.nio.file.Path;
import java.util.List;

/**
 * What the pages are written from, and where what is kept goes.
 *
 * @param store all that is kept
 * @param films films and what was measured on them
 * @param verdicts what was judged
 * @param roster the players
 * @param notes on whole practices
 * @param drawings of possessions and findings
 * @param shown the films as browsers play them
 * @param trends of the season
 * @param clips that are being cut
 * @param folder that label files and clips are written into
 */
record Room(
        Store store,
        Films films,
        Verdicts verdicts,
        Roster roster,
        Notes notes,
        Drawings drawings,
        ShownFilms shown,
        SeasonTrends trends,
        ClipJobs clips,
        Path folder) {

    static Room of(Store store, ShownFilms shown, Path folder) {
        Films films = new Films(store);
        return new Room(
                store,
                films,
                new Verdicts(store),
                new Roster(store),
                new Notes(store),
                new Drawings(films, new Kept(store)),
                shown,
                new SeasonTrends(store),
                new ClipJobs(),
                folder);
    }

    /** A finding with what it belongs to. */
    record Found(
            StoredFinding finding,
            StoredFilm film,
            StoredPossession possession,
            List<StoredTrack> tracks,
            Names names) {}

    /** The film that a request's path names. */
    StoredFilm film(Context request) {
        return film(request.pathParam("film"));
    }

    /** @throws Guard.Refused with 404 where there is none */
    StoredFilm film(String id) {
        return films.film(id).orElseThrow(Requests::missing);
    }

    /** @throws Guard.Refused with 404 where there is none */
    StoredFinding finding(String id) {
        return films.finding(id).orElseThrow(Requests::missing);
    }

    /** The finding that a request's path names. */
    Found found(Context request) {
        StoredFinding finding = finding(request.pathParam("id"));
        StoredPossession possession = films.possessions(finding.filmId()).stream()
                .filter(p -> p.possession().number() == finding.possession())
                .findFirst()
                .orElseThrow(Requests::missing);
        List<StoredTrack> tracks = films.tracks(finding.filmId());
        return new Found(finding, film(finding.filmId()), possession, tracks, new Names(tracks));
    }
}
