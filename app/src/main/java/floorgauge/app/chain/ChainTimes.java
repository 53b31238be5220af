package floorgauge.app.chain;

import floorgauge.app.result.FilmSource;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import floorgauge.vision.timing.StageTimes;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What the measuring of films took, stage by stage. For reading alone: it never enters a result. */
public final class ChainTimes {

    private final StageTimes stages = new StageTimes();
    private final List<Path> films = new ArrayList<>();
    private long frames;
    private double filmSeconds;
    private double clockSeconds;

    /** Where the stages are added up. */
    StageTimes stages() {
        return stages;
    }

    void measured(Path film, FilmSource source) {
        films.add(film);
        frames += source.frames();
        filmSeconds += source.durationSeconds();
    }

    /** A film was begun at this time of the system's clock for intervals, and is done. */
    void done(long begunNanos) {
        clockSeconds += (System.nanoTime() - begunNanos) / 1e9;
    }

    /**
     * The sums of all films measured.
     *
     * @param frames of the films
     * @param filmSeconds how long the films play
     * @param clockSeconds how long measuring them took
     * @param readingSeconds what it takes to read the films once and do nothing with them
     * @param stages seconds by stage, of all threads together
     */
    public record Summary(
            long frames, double filmSeconds, double clockSeconds, double readingSeconds, Map<String, Double> stages) {}

    /** Reads every film measured once more, to know what reading alone takes. */
    public Summary summary() {
        StageTimes alone = new StageTimes();
        for (Path film : films) {
            alone.during("reading", () -> read(film));
        }
        double reading = alone.seconds().values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        return new Summary(frames, filmSeconds, clockSeconds, reading, stages.seconds());
    }

    private static void read(Path film) {
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            boolean more = true;
            while (more) {
                more = reader.read(frame);
            }
        }
    }
}
