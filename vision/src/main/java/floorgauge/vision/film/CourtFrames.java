package floorgauge.vision.film;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.opencv.core.Mat;

/** Frames of a film's beginning from which its court is found: spread, so that players stand elsewhere on each. */
public final class CourtFrames {

    private static final int COUNT = 9;

    /** Later frames would show no more of the court, and a long film would be read for nothing. */
    private static final double MOST_SECONDS = 60;

    private CourtFrames() {}

    /**
     * Hands the frames to the work and frees them afterwards.
     *
     * @param work takes 8-bit BGR pictures in order of time
     * @throws FilmException where the film can't be read
     */
    public static <T> T with(Path film, Function<List<Mat>, T> work) {
        List<Mat> frames = new ArrayList<>();
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            double stated = reader.info().durationSeconds();
            double span = Double.isNaN(stated) ? MOST_SECONDS : Math.min(stated, MOST_SECONDS);
            while (frames.size() < COUNT && reader.read(frame)) {
                if (frame.timeSeconds() >= span * frames.size() / COUNT) {
                    frames.add(frame.bgr().clone());
                }
            }
            return work.apply(frames);
        } finally {
            frames.forEach(Mat::release);
        }
    }
}
