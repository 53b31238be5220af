package floorgauge.app.review;

import floorgauge.app.InventedFilm;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.TracksParquet;
import floorgauge.app.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A store with one invented film, and servers of it. */
final class TestSeason {

    private TestSeason() {}

    /** A results folder with the invented film in it. */
    static Path results(Path folder) throws IOException {
        MeasuredFilm measured = InventedFilm.measured();
        Path film = Files.createDirectories(folder.resolve("results/practice"));
        TracksParquet.write(measured.tracks(), film.resolve("tracks.parquet"));
        FindingsJson.write(measured, film.resolve("findings.json"));
        return folder.resolve("results");
    }

    /** A store with that film. */
    static Store store(Path folder) throws IOException {
        Store store = Store.open(folder.resolve("season.db"));
        new Desk(store, List.of(folder)).lay(results(folder), problem -> {
            throw new IllegalStateException(problem);
        });
        return store;
    }

    /** A server on a free loopback port; the notice is agreed to. */
    static ReviewServer serve(Store store, Path folder) {
        store.keep("consent", "2026-01-01T00:00:00Z");
        return new ReviewServer(store, new ReviewServer.Settings("127.0.0.1", 0, Set.of(), Optional.empty(), folder))
                .start();
    }
}
