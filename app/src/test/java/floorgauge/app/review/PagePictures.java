package floorgauge.app.review;

import floorgauge.app.season.DemoSeason;
import floorgauge.app.store.Films;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.events.finding.FindingKind;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;

/**
 * Takes the documentation's pictures of the page, as a fresh machine shows it. Not part of the tests; run it with {@code mvn -B
 * test -pl app -am -Dtest=PagePictures -Dsurefire.failIfNoSpecifiedTests=false -Dfloorgauge.screenshots=DIR}, look at each, and put them
 * into docs/pictures. {@code -Dfloorgauge.measured=RESULTS}, the results folder of the sample clip pin-down-screen-misses, adds the picture with film.
 */
class PagePictures extends InChromium {

    private static final List<Integer> WIDTHS = List.of(390, 1280, 1920);

    @TempDir
    private static Path folder;

    private static Store store;

    @BeforeAll
    static void open() throws IOException {
        assumeChromium();
        store = Store.open(folder.resolve("season.db"));
        DemoSeason season = new DemoSeason(store, folder.resolve("results"));
        season.makeNewest();
        season.makeOthers(done -> {});
        store.keep("consent", "2026-01-01T00:00:00Z");
        serve(store, folder);
        launch(folder.resolve("browser"));
    }

    @Test
    void demoSeason() throws IOException {
        String finding = "/finding/" + weakScreen(new Films(store).newest().orElseThrow());
        for (int width : WIDTHS) {
            size(width, 900);
            sheet("review-sheet-" + width);
            finding(finding, "review-finding-" + width);
        }
        size(1200, 1150);
        sheet("review-sheet");
        finding(finding, "review-finding");
        size(1280, 1000);
        trends("review-trends-1280");
        size(390, 1100);
        trends("review-trends-390");
    }

    @Test
    void film() throws IOException {
        String measured = System.getProperty("floorgauge.measured", "");
        Assumptions.assumeFalse(measured.isBlank(), "no results of the sample clip (-Dfloorgauge.measured=RESULTS)");
        Path clips = Path.of(System.getProperty("floorgauge.root", "..")).resolve("sample-clips");
        new Desk(store, List.of(clips)).lay(Path.of(measured), problem -> {
            throw new IllegalStateException(problem);
        });
        StoredFilm film = new Films(store)
                .all().stream()
                        .map(Films.Listed::film)
                        .filter(f -> f.film().isPresent())
                        .findFirst()
                        .orElseThrow();
        size(1280, 900);
        go("/finding/" + surest(film));
        awaitStage();
        await("a frame", d -> ((Number) js("return document.getElementById('film').readyState")).intValue() >= 2);
        press("m");
        await("the moment", d -> Boolean.FALSE.equals(js("return document.getElementById('film').seeking")));
        picture("review-film-1280");
    }

    private static String weakScreen(StoredFilm film) {
        return new Films(store)
                .findings(film.id()).stream()
                        .filter(f -> f.finding().kind() == FindingKind.WEAK_SCREEN)
                        .findFirst()
                        .map(StoredFinding::id)
                        .orElseThrow();
    }

    /** The first of those that are surest. */
    private static String surest(StoredFilm film) {
        return new Films(store)
                .findings(film.id()).stream()
                        .min(Comparator.comparingDouble(f -> -f.finding().probability()))
                        .map(StoredFinding::id)
                        .orElseThrow();
    }

    private static void sheet(String name) throws IOException {
        go("/");
        await("the sheet", d -> Boolean.TRUE.equals(js("return document.readyState === 'complete'")));
        picture(name);
    }

    private static void finding(String path, String name) throws IOException {
        go(path);
        awaitStage();
        press("m");
        picture(name);
    }

    private static void trends(String name) throws IOException {
        go("/trends");
        await(
                "the charts",
                d -> !d.findElements(By.cssSelector(".uplot canvas")).isEmpty());
        js("return new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
        picture(name);
    }
}
