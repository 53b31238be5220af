package floorgauge.eval.film;

import floorgauge.court.rules.RuleSet;
import floorgauge.vision.tracking.FilmTracker;
import floorgauge.vision.tracking.TrackingSettings;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.opencv.core.Core;

/** A process of its own: prints the digest of everything that tracking a film gives, to the last digit. */
final class TracksOfFilm {

    private TracksOfFilm() {}

    /** @param arguments FILM THREADS; PyTorch's threads are given as the system property that DJL reads */
    public static void main(String[] arguments) throws NoSuchAlgorithmException {
        floorgauge.court.calibration.OpenCv.load();
        Core.setNumThreads(Integer.parseInt(arguments[1]));
        try (FilmTracker tracker = new FilmTracker(TrackingSettings.defaults())) {
            FilmMeasurement measured = FilmMeasurement.of(Path.of(arguments[0]), RuleSet.fiba(), tracker);
            String everything =
                    measured.court() + "\n" + measured.tracked().orElseThrow().tracks();
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(everything.getBytes(StandardCharsets.UTF_8));
            System.out.println(
                    measured.tracked().orElseThrow().tracks().players().size() + " tracks, "
                            + HexFormat.of().formatHex(digest));
        }
    }
}
