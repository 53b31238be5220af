package floorgauge.app.export;

import floorgauge.app.batch.FilmList;
import floorgauge.app.result.FilmSource;
import floorgauge.court.failure.MendableException;
import floorgauge.vision.film.FilmHash;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Finds the film that results were measured from, by its name and its digest. Results say neither where it lay nor hold it.
 * Not safe for use by several threads.
 */
public final class FilmSearch {

    private final List<Path> places;
    private final Map<Path, String> digests = new HashMap<>();

    /** @param places films, and folders that hold films */
    public FilmSearch(List<Path> places) {
        this.places = List.copyOf(places);
    }

    /**
     * The film; empty where none of the places holds it. Files that were named themselves may be called anything; in folders only
     * those with the film's name are looked at, since reading every film of a folder would take long.
     */
    public Optional<Path> find(FilmSource film) {
        return FilmList.of(places).films().stream()
                .filter(f -> f.getFileName().toString().equals(film.name()) || isNamed(f))
                .filter(f -> digest(f).equals(film.sha256()))
                .findFirst();
    }

    private boolean isNamed(Path file) {
        return places.stream().anyMatch(place -> place.normalize().equals(file));
    }

    /** @throws MendableException where none of the places holds it */
    public Path require(FilmSource film) {
        return find(film)
                .orElseThrow(() -> new MendableException("the film " + film.name()
                        + " was not found, or has changed since it was measured; say where it lies with --films"));
    }

    private String digest(Path file) {
        return digests.computeIfAbsent(file, FilmHash::sha256);
    }
}
