package floorgauge.eval.benchmark;

import floorgauge.court.track.ImageBox;
import floorgauge.vision.background.BackgroundModel;
import floorgauge.vision.background.BackgroundScan;
import floorgauge.vision.background.MovingRegions;
import floorgauge.vision.kit.KitColour;
import floorgauge.vision.kit.KitSampler;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.opencv.core.Mat;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** What is done to each picture beside the networks: the empty hall, what moves in it, the colours of ten shirts. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class PicturesBenchmark {

    private static final int PLAYERS = 10;

    private Path film;
    private Mat picture;
    private BackgroundModel background;
    private MovingRegions moving;
    private KitSampler kits;
    private final List<ImageBox> boxes = new ArrayList<>();

    @Setup
    public void open() throws IOException {
        film = BenchmarkFilm.write();
        picture = BenchmarkFilm.picture();
        background = BackgroundScan.scan(film);
        if (!background.isKnown()) {
            throw new IllegalStateException("without the empty hall nothing is timed");
        }
        moving = new MovingRegions(background);
        kits = new KitSampler();
        for (int i = 0; i < PLAYERS; i++) {
            boxes.add(new ImageBox(100 * i, 200 + 37 * i, 40, 120));
        }
    }

    @TearDown
    public void close() throws IOException {
        kits.close();
        moving.close();
        background.close();
        picture.release();
        Files.delete(film);
    }

    /** The whole film is read, a few of its pictures kept. */
    @Benchmark
    @Floor(
            work = "the empty hall from a film of 125 frames",
            operations = BenchmarkFilm.FRAMES * 1280 * 720 * 1.5,
            bytes = BenchmarkFilm.FRAMES * 2 * 1280 * 720 * 1.5)
    public boolean emptyHall() {
        try (BackgroundModel scanned = BackgroundScan.scan(film)) {
            return scanned.isKnown();
        }
    }

    /** The picture is read once and made smaller: an addition a sample. */
    @Benchmark
    @Floor(work = "what moves in a picture of 1280 x 720", operations = 1280 * 720 * 3, bytes = 1280 * 720 * 3)
    public List<ImageBox> whatMoves() {
        moving.look(picture, 1);
        return moving.boxes();
    }

    /** A chest is a sixth of its box; each sample is read, and counted in a histogram. */
    @Benchmark
    @Floor(work = "ten shirts", operations = PLAYERS * 40 * 20 * 3 * 2, bytes = PLAYERS * 40 * 20 * 3)
    public int shirts() {
        int seen = 0;
        for (ImageBox box : boxes) {
            Optional<KitColour> kit = kits.sample(picture, box, Optional.empty(), boxes);
            seen += kit.isPresent() ? 1 : 0;
        }
        return seen;
    }
}
