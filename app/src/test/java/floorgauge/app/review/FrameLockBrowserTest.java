package floorgauge.app.review;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.InventedFilm;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.TracksParquet;
import floorgauge.app.store.Films;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.court.track.FilmTracks;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Film of 59.94 pictures a second in the page: every picture carries its number, so that what is on the screen can be held
 * against what is drawn over it.
 */
class FrameLockBrowserTest extends InChromium {

    private static final double RATE = 60_000 / 1001.0;

    /** The drawing of one frame may take no longer than the frame is shown. */
    private static final double FRAME_MILLISECONDS = 1000 / RATE;

    private static final String READ = """
            const video = document.getElementById('film');
            const canvas = new OffscreenCanvas(%1$d * 8, 8);
            const pen = canvas.getContext('2d', { willReadFrequently: true });
            const number = () => {
              pen.drawImage(video, 0, 0, %1$d * %2$d, %2$d, 0, 0, %1$d * 8, 8);
              const pixels = pen.getImageData(0, 0, %1$d * 8, 8).data;
              let read = 0;
              for (let bit = 0; bit < %1$d; bit++) {
                read |= (pixels[4 * (4 * %1$d * 8 + bit * 8 + 4)] > 127 ? 1 : 0) << bit;
              }
              return read;
            };
            const view = floorgaugeView;
            const drawn = () => Math.round(view.clock.time * %3$s);
            """;

    @TempDir
    private static Path folder;

    @BeforeAll
    static void open() throws IOException {
        assumeChromium();
        Path films = Files.createDirectories(folder.resolve("films"));
        Path film = films.resolve("fast.mp4");
        FilmTracks tracks = InventedFilm.tracks(RATE);
        int frames = tracks.frameTimesSeconds().size();
        NumberedFilm.write(film, InventedFilm.WIDTH, InventedFilm.HEIGHT, RATE, frames);
        MeasuredFilm invented = InventedFilm.measured();
        MeasuredFilm measured = new MeasuredFilm(
                new FilmSource(
                        "fast.mp4",
                        Digest.ofFile(film),
                        InventedFilm.WIDTH,
                        InventedFilm.HEIGHT,
                        frames / RATE,
                        frames),
                invented.settings(),
                invented.court(),
                tracks,
                invented.findings());
        Path results = Files.createDirectories(folder.resolve("results/fast"));
        TracksParquet.write(tracks, results.resolve("tracks.parquet"));
        FindingsJson.write(measured, results.resolve("findings.json"));
        Store store = Store.open(folder.resolve("season.db"));
        store.keep("consent", "2026-01-01T00:00:00Z");
        new Desk(store, List.of(films)).lay(results, problem -> {
            throw new IllegalStateException(problem);
        });
        serve(store, folder);
        launch(folder.resolve("browser"));
        StoredFilm stored = new Films(store).newest().orElseThrow();
        go("/finding/" + new Films(store).findings(stored.id()).get(0).id());
        awaitStage();
        await("a frame", d -> ((Number) js("return document.getElementById('film').readyState")).intValue() >= 2);
    }

    private static String reader() {
        return String.format(
                Locale.ROOT, READ, NumberedFilm.BITS, NumberedFilm.SIDE, String.format(Locale.ROOT, "%.9f", RATE));
    }

    @Test
    void everyStepShowsTheFrameThatIsDrawnOver() {
        for (int step = 0; step < 8; step++) {
            long before = ((Number) js(reader() + "return drawn()")).longValue();
            press("l");
            await(
                    "step " + step,
                    d -> Boolean.TRUE.equals(js(reader()
                            + "return !video.seeking && number() === drawn() && drawn() === " + (before + 1))));
        }
    }

    /**
     * While it plays, the film goes on by itself where the page is slow, so the picture that is read just after may be a later
     * one; it must never be an earlier one. Reading a picture takes longer than drawing over it, so in the film's second half nothing
     * is read: how many frames a second the page is told of then depends on the machine, and is printed as undisturbed.
     */
    @Test
    @SuppressWarnings("unchecked")
    void everyFrameThatIsShownIsDrawnOverInTime() {
        Map<String, Object> seen = (Map<String, Object>)
                browser.executeAsyncScript(reader() + """
                const done = arguments[arguments.length - 1];
                view.clock.stop();
                view.clock.seek(view.clock.from);
                const pairs = [];
                const before = view.overlay.durations.length;
                const costs = [];
                const tell = view.clock.tell.bind(view.clock);
                view.clock.tell = () => {
                  const began = performance.now();
                  tell();
                  costs.push(performance.now() - began);
                };
                let first = null;
                let last = null;
                const half = (view.clock.from + view.clock.to) / 2;
                const undisturbed = { from: null, to: null, told: 0 };
                const look = (now, data) => {
                  first ??= { now, presented: data.presentedFrames, at: data.mediaTime };
                  last = { now, presented: data.presentedFrames, at: data.mediaTime };
                  if (data.mediaTime < half) {
                    pairs.push([Math.round(data.mediaTime * %s), drawn(), number()]);
                  } else {
                    undisturbed.from ??= now;
                    undisturbed.to = now;
                    undisturbed.told += 1;
                  }
                  if (data.mediaTime < view.clock.to - 0.3) {
                    video.requestVideoFrameCallback(look);
                    return;
                  }
                  view.clock.stop();
                  const durations = view.overlay.durations.slice(before).sort((a, b) => a - b);
                  delete view.clock.tell;
                  costs.sort((a, b) => a - b);
                  done({
                    page: costs[costs.length >> 1],
                    frames: pairs.length,
                    undisturbed: (undisturbed.told - 1) / ((undisturbed.to - undisturbed.from) / 1000),
                    presented: last.presented - first.presented + 1,
                    film: Math.round((last.at - first.at) * %s) + 1,
                    seconds: (last.now - first.now) / 1000,
                    others: pairs.filter(([shown, over]) => shown !== over).length,
                    behind: pairs.filter(([, over, read]) => read < over).length,
                    exact: pairs.filter(([, over, read]) => read === over).length,
                    drawn: durations.length,
                    median: durations[durations.length >> 1],
                    most: durations[Math.floor(durations.length * 0.95)],
                  });
                };
                video.addEventListener('seeked', () => {
                  video.requestVideoFrameCallback(look);
                  view.clock.play();
                }, { once: true });
                """.replace("%s", String.format(Locale.ROOT, "%.9f", RATE)));
        System.out.println("59.94 pictures a second in the page: " + seen);
        assertThat(number(seen, "frames")).isGreaterThan(10);
        assertThat(number(seen, "others"))
                .as("what is drawn is of the frame shown")
                .isZero();
        assertThat(number(seen, "behind"))
                .as("pictures on the screen that are older than what is drawn over them")
                .isZero();
        assertThat(number(seen, "drawn"))
                .as("the overlay is drawn for every frame that the browser told of")
                .isGreaterThanOrEqualTo(number(seen, "frames"));
        assertThat(number(seen, "undisturbed")).isPositive();
        assertThat(number(seen, "median")).isLessThan(FRAME_MILLISECONDS / 2);
    }

    private static double number(Map<String, Object> seen, String name) {
        return ((Number) seen.get(name)).doubleValue();
    }
}
