package floorgauge.app.review;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.InventedFilm;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.TracksParquet;
import floorgauge.app.store.FilmImport;
import floorgauge.app.store.ImportDetails;
import floorgauge.app.store.Store;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.PossessionFindings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Times the first sheet of a long season: 300 films with 10,200 findings. Not part of the tests; run it with {@code mvn -B
 * test -pl app -am -Dtest=FirstSheetTimes -Dsurefire.failIfNoSpecifiedTests=false}.
 */
class FirstSheetTimes {

    private static final int FILMS = 300;
    private static final int POSSESSIONS = 17;
    private static final int LOADS = 20;

    @TempDir
    private Path folder;

    @Test
    void firstSheetOfALongSeason() throws Exception {
        Store store = Store.open(folder.resolve("season.db"));
        long began = System.nanoTime();
        fill(store);
        System.out.printf("%d films taken in: %.1f s%n", FILMS, (System.nanoTime() - began) / 1e9);
        try (ReviewServer server = TestSeason.serve(store, folder)) {
            Asker ask = new Asker(server.port());
            report("the first sheet of all, drawings made", ask, "/");
            List<Double> times = new ArrayList<>();
            for (int i = 0; i < LOADS; i++) {
                times.add(seconds(ask, "/"));
            }
            times.sort(null);
            System.out.printf(
                    "the same sheet again: median %.3f s, slowest %.3f s of %d%n",
                    times.get(LOADS / 2), times.get(LOADS - 1), LOADS);
            report("the list of practices", ask, "/practices");
            report("trends", ask, "/trends");
        }
    }

    private static void report(String what, Asker ask, String path) throws Exception {
        System.out.printf("%s: %.3f s%n", what, seconds(ask, path));
    }

    private static double seconds(Asker ask, String path) throws Exception {
        long began = System.nanoTime();
        assertThat(ask.get(path).statusCode()).isEqualTo(200);
        return (System.nanoTime() - began) / 1e9;
    }

    private void fill(Store store) throws IOException {
        MeasuredFilm one = InventedFilm.measured();
        Path tracks = folder.resolve("tracks.parquet");
        TracksParquet.write(one.tracks(), tracks);
        FilmImport importer = new FilmImport(store);
        Findings findings = many(one.findings().possessions().get(0));
        for (int film = 0; film < FILMS; film++) {
            Path results = Files.createDirectories(folder.resolve("results/" + film));
            Files.copy(tracks, results.resolve("tracks.parquet"));
            FilmSource source = new FilmSource(
                    "film " + film, Digest.ofText("film " + film), InventedFilm.WIDTH, InventedFilm.HEIGHT, 6, 150);
            FindingsJson.write(
                    new MeasuredFilm(source, one.settings(), one.court(), one.tracks(), findings),
                    results.resolve("findings.json"));
            importer.take(
                    results,
                    new ImportDetails(LocalDate.of(2025, 9, 1).plusDays(film), "Practice", Optional.empty(), false));
        }
    }

    /** The possession many times over, with its findings. */
    private static Findings many(PossessionFindings measured) {
        List<PossessionFindings> possessions = new ArrayList<>();
        for (int number = 1; number <= POSSESSIONS; number++) {
            Possession p = measured.possession();
            List<Finding> findings = measured.findings();
            possessions.add(new PossessionFindings(
                    new Possession(
                            number,
                            p.fromSeconds(),
                            p.toSeconds(),
                            p.attack(),
                            p.attackProbability(),
                            p.end(),
                            p.attackers(),
                            p.defenders(),
                            p.ballSeen(),
                            p.outcome()),
                    findings,
                    measured.spacing(),
                    List.of(),
                    measured.notSeen()));
        }
        return new Findings(possessions, List.of());
    }
}
