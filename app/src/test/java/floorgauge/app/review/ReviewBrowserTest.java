package floorgauge.app.review;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.result.CourtReading;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.RunSettings;
import floorgauge.app.result.TracksParquet;
import floorgauge.app.season.DemoSeason;
import floorgauge.app.store.Films;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.Verdict;
import floorgauge.app.store.Verdicts;
import floorgauge.court.track.FilmTracks;
import floorgauge.eval.score.FilmPairing;
import floorgauge.eval.score.LabelFolder;
import floorgauge.eval.score.ResultsReader;
import floorgauge.events.Measurement;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/**
 * A morning with the demo season in Debian's Chromium, one step after the other. Pictures of the pages are written into the
 * folder of the system property {@code floorgauge.screenshots}, where it is given.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class ReviewBrowserTest extends InChromium {

    private static final int[] WIDTHS = {390, 1280, 1920};

    /** Figures of the page's own weight are checked before film. */
    private static final long MOST_BYTES = 3_000_000;

    @TempDir
    private static Path folder;

    private static Store store;
    private static StoredFilm practice;

    @BeforeAll
    static void open() throws IOException {
        assumeChromium();
        store = Store.open(folder.resolve("demo.db"));
        new DemoSeason(store, folder.resolve("results")).makeNewest();
        practice = new Films(store).newest().orElseThrow();
        serve(store, folder);
        launch(folder.resolve("browser"));
    }

    @Test
    @Order(1)
    void theNoticeIsReadFirst() {
        go("/");
        await("the notice", d -> d.getCurrentUrl().endsWith("/before"));
        assertThat(text("main")).contains("consent").contains("minors");
        accessible("the notice");
        browser.findElement(By.id("agree")).click();
        await("the sheet", d -> !d.findElements(By.id("sheet")).isEmpty());
        assertThat(text("h1")).startsWith("Practice 16");
        assertThat(text(".kicker")).contains("simulated");
        assertThat(browser.findElements(By.cssSelector(".possession svg.diagram")))
                .isNotEmpty();
    }

    @Test
    @Order(2)
    void aFindingIsPlayedAndStepped() {
        go("/");
        String first = browser.findElement(By.cssSelector("article.finding")).getAttribute("data-finding");
        go("/finding/" + first);
        await(
                "the stage",
                d -> !d.findElements(By.cssSelector("#finding[data-ready]")).isEmpty());
        double moment = now();
        press("l");
        assertThat(now()).isCloseTo(moment + 0.04, org.assertj.core.api.Assertions.within(0.011));
        press("e");
        press("e");
        assertThat(now()).isCloseTo(moment - 0.04, org.assertj.core.api.Assertions.within(0.011));
        double before = now();
        press(" ");
        await("time goes on", d -> now() > before + 0.2);
        press(" ");
        await("it stops", d -> text("#play").equals("Play"));
        press("s");
        assertThat(text("#slower")).contains("half");
        press("a");
        assertThat(text("#loop")).contains("on");
        press("m");
        assertThat(now()).isCloseTo(moment, org.assertj.core.api.Assertions.within(0.011));
        assertThat(browser.findElements(By.cssSelector("#rule [role=slider]"))).hasSize(3);
    }

    @Test
    @Order(3)
    void tenFindingsAreJudgedByKeyboardOneIsTakenBack() {
        go("/");
        await("keys", d -> Boolean.TRUE.equals(js("return document.readyState === 'complete'")));
        int findings = browser.findElements(By.cssSelector("article.finding")).size();
        int judged = Math.min(10, findings);
        String[] keys = {"r", "w", "c"};
        for (int i = 0; i < judged; i++) {
            press("n");
            press(keys[i % 3]);
            int sofar = i + 1;
            await("verdict " + sofar, d -> new Verdicts(store).given() == sofar);
        }
        for (int i = judged; i < 10; i++) {
            press("r");
            int sofar = i + 1;
            await("verdict " + sofar, d -> new Verdicts(store).given() == sofar);
        }
        assertThat(new Verdicts(store).ofFilm(practice.id())).hasSize(judged);
        press("u");
        await("taken back", d -> text("#said").contains("Taken back"));
        press("g");
        await("given back", d -> text("#said").contains("Given back"));
        press("g");
        await("nothing more", d -> text("#said").contains("Nothing was taken back"));
        press("u");
        await("taken back again", d -> text("#said").contains("Taken back"));
        assertThat(new Verdicts(store).given()).isEqualTo(10);
        go("/");
        List<WebElement> shown = browser.findElements(By.cssSelector("article.finding .state"));
        assertThat(shown.get(0).getText()).isEqualTo("right");
        assertThat(shown.get(1).getText()).isEqualTo("wrong");
        assertThat(shown.get(2).getText()).isEqualTo("can't tell");
    }

    @Test
    @Order(4)
    void oneIsCorrectedOnTheTimeRuleByKeyboard() {
        go("/");
        WebElement article = browser.findElement(By.cssSelector("article.finding"));
        String id = article.getAttribute("data-finding");
        go("/finding/" + id);
        await(
                "the stage",
                d -> !d.findElements(By.cssSelector("#finding[data-ready]")).isEmpty());
        WebElement start = browser.findElement(By.cssSelector("#rule [aria-label='Start of the finding']"));
        double from = Double.parseDouble(start.getAttribute("aria-valuenow"));
        js("arguments[0].focus()", start);
        press(Keys.ARROW_RIGHT);
        press(Keys.ARROW_RIGHT);
        assertThat(Double.parseDouble(browser.findElement(By.id("from")).getAttribute("value")))
                .isCloseTo(from + 0.08, org.assertj.core.api.Assertions.within(0.011));
        press("4");
        press("h");
        browser.switchTo().activeElement().sendKeys("set late, r w c are letters here");
        browser.findElement(By.id("save")).click();
        await("kept", d -> text(".verdict .state").equals("right, corrected"));
        Verdict verdict =
                new Verdicts(store).ofFinding(id).orElseThrow().verdict().orElseThrow();
        assertThat(verdict.fromSeconds()).isCloseTo(from + 0.08, org.assertj.core.api.Assertions.within(0.011));
        assertThat(verdict.grade()).hasValue(4);
        assertThat(verdict.note()).isEqualTo("set late, r w c are letters here");
        assertThat(verdict.answer()).isEqualTo(Verdict.Answer.RIGHT);
    }

    @Test
    @Order(5)
    void somethingMissedIsEnteredByHand() {
        go("/practice/" + practice.id() + "/by-hand");
        js("document.getElementById('from').value = '2.00'; document.getElementById('to').value = '3.50';");
        browser.findElement(By.id("save")).click();
        await("the kept page", d -> d.getCurrentUrl().contains("/kept/"));
        go("/");
        assertThat(text(".kept")).contains("Entered by hand");
    }

    @Test
    @Order(6)
    void theLabelFileIsWrittenAndScoreReadsIt() throws IOException {
        go("/");
        await("the button", d -> d.findElement(By.id("write-labels")).isDisplayed());
        browser.findElement(By.id("write-labels")).click();
        await("written", d -> text("#said").contains("Written to"));
        try (var files = Files.list(folder.resolve("labels"))) {
            assertThat(files).hasSize(1);
        }
        assertThat(FilmPairing.of(
                                LabelFolder.read(folder.resolve("labels")),
                                ResultsReader.read(folder.resolve("results")))
                        .pairs())
                .hasSize(1);
    }

    @Test
    @Order(7)
    void aSuggestionIsSetOnlyWhenItIsPressed() {
        go("/practice/" + practice.id() + "/players");
        List<WebElement> open = browser.findElements(By.cssSelector("button.take"));
        assertThat(open).hasSize(3);
        assertThat(new Films(store)
                        .tracks(practice.id()).stream().filter(t -> t.player().isEmpty()))
                .hasSize(3);
        open.get(0).click();
        await("kept", d -> text("#said").contains("kept for this film"));
        assertThat(new Films(store)
                        .tracks(practice.id()).stream().filter(t -> t.player().isEmpty()))
                .hasSize(2);
        await("two are left", d -> d.findElements(By.cssSelector("button.take")).size() == 2);
        browser.findElement(By.id("take-all")).click();
        await("all are kept", d -> text("#said").contains("2 tracks: kept"));
        assertThat(new Films(store).tracks(practice.id()))
                .allMatch(t -> t.player().isPresent());
        assertThat(browser.findElements(By.id("take-all"))).isEmpty();
    }

    @Test
    @Order(8)
    void aTrendIsSeenAndLeadsToItsFindings() {
        go("/trends");
        await(
                "charts",
                d -> !d.findElements(By.cssSelector("#trends[data-ready] .chart canvas"))
                        .isEmpty());
        WebElement trend = browser.findElement(By.cssSelector("article.trend"));
        assertThat(trend.getText()).contains("Mean").contains("possession");
        browser.findElement(By.cssSelector("article.trend summary")).click();
        browser.findElement(By.cssSelector("article.trend td a, article.trend th a"))
                .click();
        await("what stands behind", d -> d.getCurrentUrl().contains("/trends/marks"));
        assertThat(browser.findElements(By.cssSelector("main ol li a"))).isNotEmpty();
    }

    @Test
    @Order(9)
    void keysCanBeChangedAndTurnedOff() {
        go("/keys");
        await(
                "the table",
                d -> d.findElements(By.cssSelector("#key-table tbody tr")).size() > 10);
        WebElement right = browser.findElement(By.cssSelector("#key-table input[name=right]"));
        right.sendKeys("y");
        await("kept", d -> text("#said").contains("Kept"));
        assertThat(right.getAttribute("value")).isEqualTo("y");
        browser.findElement(By.id("keys-on")).click();
        await("off", d -> store.setting("keys").orElse("").contains("\"on\":false"));
        long given = new Verdicts(store).given();
        go("/");
        press("y");
        press("?");
        assertThat(js("return document.getElementById('key-list').open")).isEqualTo(false);
        go("/keys");
        await(
                "the table",
                d -> d.findElements(By.cssSelector("#key-table tbody tr")).size() > 10);
        browser.findElement(By.id("keys-usual")).click();
        await("usual", d -> store.setting("keys").orElse("").contains("\"on\":true"));
        go("/");
        await("keys are read", d -> {
            press("?");
            return Boolean.TRUE.equals(js("return document.getElementById('key-list').open"));
        });
        await("the page's own keys", d -> text("#key-list").contains("Verdict: right"));
        assertThat(new Verdicts(store).given()).isEqualTo(given);
    }

    @Test
    @Order(10)
    void everyPageIsAccessibleAndFitsItsWidth() throws IOException {
        String finding = new Films(store)
                .findings(practice.id()).stream()
                        .filter(f -> f.finding().kind().isFlag())
                        .findFirst()
                        .orElseThrow()
                        .id();
        Map<String, String> pages = new java.util.LinkedHashMap<>();
        pages.put("sheet", "/");
        pages.put("finding", "/finding/" + finding);
        pages.put("by-hand", "/practice/" + practice.id() + "/by-hand");
        pages.put("who", "/practice/" + practice.id() + "/players");
        pages.put("practices", "/practices");
        pages.put("players", "/players");
        pages.put("player", "/player/tomas-quill");
        pages.put("trends", "/trends");
        pages.put("keys", "/keys");
        for (int width : WIDTHS) {
            size(width, 900);
            for (Map.Entry<String, String> page : pages.entrySet()) {
                go(page.getValue());
                await("the page is there", d -> Boolean.TRUE.equals(js("return document.readyState === 'complete'")));
                if (page.getKey().equals("finding")) {
                    await(
                            "the stage",
                            d -> !d.findElements(By.cssSelector("#finding[data-ready]"))
                                    .isEmpty());
                }
                // A phone widens its window to what overflows, so the page is held against the width that was asked
                // for.
                long needed = ((Number) js("return document.documentElement.scrollWidth")).longValue();
                assertThat(needed).as(page.getKey() + " at " + width + " px").isLessThanOrEqualTo(width);
                accessible(page.getKey() + " at " + width + " px");
                picture(page.getKey() + "-" + width);
                if (width == 1280) {
                    dark(true);
                    accessible(page.getKey() + " in the dark");
                    picture(page.getKey() + "-dark");
                    dark(false);
                }
            }
        }
        size(1280, 900);
    }

    @Test
    @Order(11)
    void theFirstSheetWeighsLittle() {
        go("/");
        await("loaded", d -> Boolean.TRUE.equals(js("return document.readyState === 'complete'")));
        Number bytes = (Number) js("return performance.getEntriesByType('resource').concat("
                + "performance.getEntriesByType('navigation')).reduce((sum, e) => sum + e.decodedBodySize, 0)");
        assertThat(bytes.longValue()).isBetween(10_000L, MOST_BYTES);
    }

    @Test
    @Order(12)
    void filmAndPlanShowTheSameFrame() throws IOException {
        Path clip = Path.of(System.getProperty("floorgauge.root", "..")).resolve("sample-clips/pin-down-sound.mp4");
        Assumptions.assumeTrue(Files.isRegularFile(clip), "no sample clip at " + clip);
        Path results = results(clip);
        new Desk(store, List.of(clip.getParent())).lay(results, problem -> {
            throw new IllegalStateException(problem);
        });
        StoredFilm film =
                new Films(store).film(StoredFilm.idOf(Digest.ofFile(clip))).orElseThrow();
        String finding = new Films(store).findings(film.id()).get(0).id();
        go("/finding/" + finding);
        await(
                "the stage",
                d -> !d.findElements(By.cssSelector("#finding[data-ready]")).isEmpty());
        await("a frame", d -> ((Number) js("return document.getElementById('film').readyState")).intValue() >= 2);
        for (int step = 0; step < 5; step++) {
            double before = now();
            press("l");
            await("one frame on", d -> now() > before);
            await(
                    "film and table agree",
                    d -> Boolean.TRUE.equals(
                            js(
                                    "const v = floorgaugeView; return !document.getElementById('film').seeking"
                                            + " && Math.abs(document.getElementById('film').currentTime - v.clock.time) < 0.02")));
        }
        browser.findElement(By.id("clip")).click();
        // Encoding takes as long as the machine lets it; the page says so once it is done.
        Path clips = folder.resolve("clips");
        await("the clip", Duration.ofMinutes(10), d -> holdsOneClip(clips));
        await("it is said", d -> text("#said").contains("The clip is in"));
        js("document.activeElement.blur(); floorgaugeView.clock.seek(floorgaugeView.clock.from)");
        press(" ");
        await(
                "drawn while it plays",
                d -> ((Number) js("return floorgaugeView.overlay.durations.length")).intValue() > 20);
    }

    private static boolean holdsOneClip(Path clips) {
        String[] names = clips.toFile().list((place, name) -> name.endsWith(".mp4") && !name.startsWith("."));
        return names != null && names.length == 1;
    }

    /** Results for a clip from the scene it was drawn from, with nothing of the picture. */
    private static Path results(Path clip) throws IOException {
        PlayedScene scene = ScenarioLibrary.load("pin-down-sound", 1);
        FilmTracks tracks = TrueTracks.sample(scene, 30, TrackNoise.GOOD, 1);
        MeasuredFilm measured = new MeasuredFilm(
                new FilmSource(
                        clip.getFileName().toString(),
                        Digest.ofFile(clip),
                        1280,
                        720,
                        scene.durationSeconds(),
                        tracks.frameTimesSeconds().size()),
                RunSettings.of(Map.of("scene", scene.name())),
                CourtReading.withoutPicture(scene.rules()),
                tracks,
                Measurement.measure(tracks, scene.rules(), Standards.defaults()));
        Path results = Files.createDirectories(folder.resolve("clip-results/pin-down"));
        TracksParquet.write(tracks, results.resolve("tracks.parquet"));
        FindingsJson.write(measured, results.resolve("findings.json"));
        return results;
    }
}
