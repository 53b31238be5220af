package floorgauge.eval.score;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Brings labels and results of one film together, by the digest of the film.
 *
 * @param pairs the first annotator of each film against the results, in the order of label files
 * @param seconds a second annotator of the same film, in the same order; empty where there is none
 */
public record FilmPairing(List<FilmPair> pairs, List<Optional<LabelledFilm>> seconds) {

    public FilmPairing {
        pairs = List.copyOf(pairs);
        seconds = List.copyOf(seconds);
    }

    /** @throws ScoreException where a label file is of a film that the results do not hold */
    public static FilmPairing of(List<LabelledFilm> labels, List<FilmResults> results) {
        Map<String, FilmResults> byDigest = new HashMap<>();
        results.forEach(r -> byDigest.putIfAbsent(r.sha256(), r));
        Map<String, Integer> place = new HashMap<>();
        List<FilmPair> pairs = new ArrayList<>();
        List<Optional<LabelledFilm>> seconds = new ArrayList<>();
        for (LabelledFilm film : labels) {
            String digest = digest(film);
            Integer first = place.putIfAbsent(digest, pairs.size());
            if (first != null) {
                seconds.set(first, seconds.get(first).or(() -> Optional.of(film)));
            } else {
                FilmResults found =
                        Optional.ofNullable(byDigest.get(digest)).orElseThrow(() -> otherFilm(film, digest, results));
                pairs.add(new FilmPair(film, found));
                seconds.add(Optional.empty());
            }
        }
        return new FilmPairing(pairs, seconds);
    }

    private static String digest(LabelledFilm film) {
        return film.labels()
                .film()
                .map(f -> f.sha256())
                .orElseThrow(() -> new ScoreException(
                        film.file(),
                        "film",
                        "expected the film's name and SHA-256, found none; label a film, not a scene"));
    }

    private static ScoreException otherFilm(LabelledFilm film, String digest, List<FilmResults> results) {
        String name = film.labels().film().orElseThrow().file();
        Optional<FilmResults> sameName =
                results.stream().filter(r -> r.name().equals(name)).findFirst();
        String found = sameName.map(r -> "the results of " + name + " are of another film, SHA-256 " + r.sha256())
                .orElse("the results hold no film of this digest; measure " + name + " first");
        return new ScoreException(film.file(), "film, sha256", "expected results of film " + digest + ", but " + found);
    }
}
