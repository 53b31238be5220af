package floorgauge.eval.film;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FilmTracks;
import floorgauge.vision.network.ModelFolder;
import floorgauge.vision.network.Precision;
import floorgauge.vision.tracking.FilmTracker;
import floorgauge.vision.tracking.TrackingSettings;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.opencv.core.Core;

/** A process of its own, so that OpenCV and PyTorch start with the number of threads asked for: prints the digest of everything that tracking a film gives, to the last digit. */
final class TracksOfFilm {

    private TracksOfFilm() {}

    /** @param arguments FILM THREADS */
    public static void main(String[] arguments) throws NoSuchAlgorithmException {
        floorgauge.court.calibration.OpenCv.load();
        int threads = Integer.parseInt(arguments[1]);
        Core.setNumThreads(threads);
        try (FilmTracker tracker = new FilmTracker(
                TrackingSettings.defaults().withEveryone(), ModelFolder.standard(), Precision.SINGLE, threads)) {
            FilmTracks tracks =
                    tracker.track(Path.of(arguments[0]), floor(), (t, d) -> {}).tracks();
            byte[] digest = MessageDigest.getInstance("SHA-256")
                    .digest(tracks.toString().getBytes(StandardCharsets.UTF_8));
            System.out.println(
                    tracks.players().size() + " tracks, " + HexFormat.of().formatHex(digest));
        }
    }

    /** A nominal floor under a level camera of 1280 x 720, four metres up; finding the court's lines would take longer than all else. */
    private static CourtCalibration floor() {
        double height = 4;
        double ahead = 15;
        double horizon = 100;
        double[] rows = {0, -ahead, 1000 * height + ahead * horizon, -height, 0, height * 640, 0, 1, -horizon};
        return CourtCalibration.known(RuleSet.fiba(), rows, 1280, 720);
    }
}
