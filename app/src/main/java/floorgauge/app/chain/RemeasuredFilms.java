package floorgauge.app.chain;

import floorgauge.app.result.TracksParquetReader;
import floorgauge.court.failure.MendableException;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FilmTracks;
import floorgauge.eval.events.EventMark;
import floorgauge.eval.fit.FitFilm;
import floorgauge.eval.score.FilmPair;
import floorgauge.eval.score.FilmPairing;
import floorgauge.eval.score.FilmResults;
import floorgauge.events.Measurement;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Measured films whose tracks can be measured again under other standards, without their pictures. */
public final class RemeasuredFilms {

    private static final String TRACKS = "tracks.parquet";

    private RemeasuredFilms() {}

    /**
     * @param results the results folder, or one film's folder in it
     * @throws MendableException where a film's tracks are missing or its rule book is unknown
     */
    public static List<FitFilm> of(FilmPairing pairing, Path results) {
        return pairing.pairs().stream().map(pair -> film(pair, results)).toList();
    }

    private static FitFilm film(FilmPair pair, Path results) {
        FilmResults film = pair.results();
        Path file = results.resolve(film.folder()).resolve(TRACKS);
        if (!Files.isRegularFile(file)) {
            throw new MendableException(
                    file + " is missing, so " + film.name() + " cannot be measured anew; measure the film again");
        }
        FilmTracks tracks = TracksParquetReader.read(file);
        RuleSet rules = rules(film);
        return new FitFilm(
                pair.events(),
                standards -> EventMark.of(
                        Measurement.measure(tracks, rules, standards).all()));
    }

    private static RuleSet rules(FilmResults film) {
        String name = film.conditions().getOrDefault("rules", "");
        return RuleSet.named(name)
                .orElseThrow(() -> new MendableException(
                        film.name() + " was measured by an unknown rule book: '" + name + "'; measure the film again"));
    }
}
