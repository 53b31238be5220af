package floorgauge.app.export;

import floorgauge.app.result.FindingsDocument;
import floorgauge.app.result.FindingsJsonReader;
import floorgauge.app.result.ResultPlaces;
import floorgauge.app.result.TracksParquetReader;
import floorgauge.app.result.TracksWindow;
import floorgauge.court.failure.MendableException;
import floorgauge.court.track.FilmTracks;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A film's folder of results.
 *
 * @param folder where it lies
 * @param findings what it holds
 */
public record MeasuredFolder(Path folder, FindingsDocument findings) {

    public MeasuredFolder {
        Objects.requireNonNull(folder, "folder");
        Objects.requireNonNull(findings, "findings");
    }

    /**
     * The films that places on a command line stand for: each the results of one film, or a folder of such.
     *
     * @return in the order given, folders in the order of their names
     * @throws MendableException where there are none, or one cannot be read
     */
    public static List<MeasuredFolder> at(List<Path> places) {
        List<MeasuredFolder> films = new ArrayList<>();
        for (Path place : places) {
            List<Path> folders = ResultPlaces.below(place);
            if (folders.isEmpty()) {
                throw new MendableException("no results in " + place + "; measure a film with --out " + place);
            }
            for (Path folder : folders) {
                MeasuredFolder film =
                        new MeasuredFolder(folder, FindingsJsonReader.read(folder.resolve(ResultPlaces.FINDINGS)));
                if (!films.contains(film)) {
                    films.add(film);
                }
            }
        }
        return films;
    }

    /** The folder's own name, which is the film's, and its own among the folders beside it. */
    public String name() {
        return folder.toAbsolutePath().normalize().getFileName().toString();
    }

    /** Everyone's tracks. */
    public FilmTracks tracks() {
        return TracksParquetReader.read(folder.resolve("tracks.parquet"));
    }

    /** Where everyone stood, without boxes and poses. */
    public List<TracksWindow.Place> places() {
        return TracksWindow.all(folder.resolve("tracks.parquet")).places();
    }

    /** The film's mean frames a second. */
    public double framesPerSecond() {
        return frameRate().perSecond();
    }

    /** Times of the film against its frames, as far as whole numbers of frames are asked for. */
    FrameRate frameRate() {
        return FrameRate.of(findings.film().frames(), findings.film().durationSeconds());
    }
}
