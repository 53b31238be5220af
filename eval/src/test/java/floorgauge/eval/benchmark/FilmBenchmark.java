package floorgauge.eval.benchmark;

import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** Frames decoded to BGR, from H.264 at 1280 x 720. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class FilmBenchmark {

    /** Width of the pictures handed out. */
    @Param({"1280", "640"})
    public int width;

    private Path film;

    @Setup
    public void write() throws IOException {
        film = BenchmarkFilm.write();
    }

    @TearDown
    public void delete() throws IOException {
        Files.delete(film);
    }

    /** Each sample of the coded picture is predicted, corrected and written: an addition and a byte read and written. */
    @Benchmark
    @Floor(work = "a frame of 1280 x 720", operations = 1280 * 720 * 1.5, bytes = 2 * 1280 * 720 * 1.5)
    @OperationsPerInvocation(BenchmarkFilm.FRAMES)
    public double decode() {
        double last = 0;
        try (FilmReader reader = FilmReader.open(film, width);
                FilmFrame frame = new FilmFrame()) {
            while (reader.read(frame)) {
                last = frame.timeSeconds();
            }
        }
        return last;
    }
}
