package floorgauge.app.review;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.store.Store;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.NoSuchElementException;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/** What tests in Debian's Chromium share: a server of the page, the browser, and looking at what it shows. One class at a time. */
abstract class InChromium {

    private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
    private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
    private static final Duration PATIENCE = Duration.ofMinutes(2);

    static ReviewServer server;
    static ChromeDriver browser;

    static void assumeChromium() {
        Assumptions.assumeTrue(
                Files.isExecutable(CHROMIUM) && Files.isExecutable(DRIVER),
                "Debian's packages chromium and chromium-driver are not installed");
    }

    static void serve(Store store, Path folder) {
        server = new ReviewServer(store, new ReviewServer.Settings("127.0.0.1", 0, Set.of(), Optional.empty(), folder))
                .start();
    }

    /** @param profile a folder for the browser's own files */
    static void launch(Path profile) {
        ChromeOptions options = new ChromeOptions();
        options.setBinary(CHROMIUM.toFile());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-dev-shm-usage",
                "--autoplay-policy=no-user-gesture-required",
                "--force-device-scale-factor=1",
                "--user-data-dir=" + profile);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(DRIVER.toFile())
                .usingAnyFreePort()
                .build();
        browser = new ChromeDriver(service, options);
        size(1280, 900);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.quit();
            browser = null;
        }
        if (server != null) {
            server.close();
            server = null;
        }
    }

    /** As someone sees it whose machine asks for dark pages. */
    static void dark(boolean dark) {
        browser.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
    }

    static void awaitStage() {
        await(
                "the stage",
                d -> !d.findElements(By.cssSelector("#finding[data-ready]")).isEmpty());
    }

    static void size(int width, int height) {
        // Beyond what a headless window can be made, the view itself is set.
        browser.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 500));
        browser.manage().window().setSize(new Dimension(Math.max(500, width), height));
    }

    static void go(String path) {
        browser.get("http://127.0.0.1:" + server.port() + path);
    }

    /** A condition of the page that is waited for, and fails with its name. */
    @FunctionalInterface
    interface Condition {
        boolean holds(WebDriver driver);
    }

    static void await(String what, Condition condition) {
        await(what, PATIENCE, condition);
    }

    static void await(String what, Duration patience, Condition condition) {
        long end = System.nanoTime() + patience.toNanos();
        while (!holds(condition)) {
            assertThat(System.nanoTime()).as(what).isLessThan(end);
            // The browser's own clock paces the looking.
            browser.executeAsyncScript("setTimeout(arguments[0], 50)");
        }
    }

    static boolean holds(Condition condition) {
        try {
            return condition.holds(browser);
        } catch (NoSuchElementException | StaleElementReferenceException e) {
            return false;
        }
    }

    static void press(CharSequence key) {
        browser.switchTo().activeElement().sendKeys(key);
    }

    static String text(String selector) {
        return browser.findElement(By.cssSelector(selector)).getText();
    }

    static Object js(String script, Object... arguments) {
        return ((JavascriptExecutor) browser).executeScript(script, arguments);
    }

    static double now() {
        return Double.parseDouble(text("#now").replace(" s", ""));
    }

    static void picture(String name) throws IOException {
        String place = System.getProperty("floorgauge.screenshots", "");
        if (!place.isBlank()) {
            Files.createDirectories(Path.of(place));
            Files.write(Path.of(place, name + ".png"), browser.getScreenshotAs(OutputType.BYTES));
        }
    }

    /** No serious or critical violation by axe-core (Deque), rules of WCAG 2.2 A and AA. */
    static void accessible(String what) {
        js(axe());
        Object found = ((JavascriptExecutor) browser)
                .executeAsyncScript("const done = arguments[arguments.length - 1];"
                        + "axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']}).then("
                        + "r => done(r.violations.filter(v => ['serious', 'critical'].includes(v.impact)).map("
                        + "v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)).join(' | '))));");
        assertThat((List<?>) found).as(what).isEmpty();
    }

    static String axe() {
        try (InputStream in = InChromium.class.getResourceAsStream("/axe.min.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
