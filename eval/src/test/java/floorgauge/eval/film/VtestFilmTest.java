package floorgauge.eval.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtCalibrator;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.PlayerTrack;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import floorgauge.vision.tracking.FilmTracker;
import floorgauge.vision.tracking.TrackedFilm;
import floorgauge.vision.tracking.TrackingSettings;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.opencv.core.Mat;

/**
 * People who walk across a yard, filmed by a fixed camera: vtest.avi of OpenCV's samples (Debian package opencv-doc), 768 x
 * 576, 10 frames a second, 795 frames. There is no court and there are no labels: a nominal ground plane stands in for one,
 * and the tracks are drawn on a picture to be looked at. What can be asserted without labels is what a walk demands: few,
 * long tracks, at a walk's speed.
 */
class VtestFilmTest {

    private static final int WIDTH = 768;
    private static final int HEIGHT = 576;

    /**
     * A level camera at {@code h} metres with its horizon at row {@code v0}: a floor point lies {@code f h / (v - v0)} ahead
     * and that distance times {@code (u - u0) / f} to the side. People 1.75 m tall are about 75 pixels high where their feet
     * are at row 250 and 115 where they are at row 450, which gives the horizon at row -125 and h = 8.7 m; f is nominal.
     */
    private static CourtCalibration yard() {
        double f = 800;
        double horizon = -125;
        double height = 8.7;
        double ahead = 15;
        return CourtCalibration.known(
                RuleSet.fiba(),
                new double[] {0, -ahead, f * height + ahead * horizon, -height, 0, height * WIDTH / 2.0, 0, 1, -horizon
                },
                WIDTH,
                HEIGHT);
    }

    private static Path film() {
        String given = System.getProperty("floorgauge.vtest", "");
        assumeTrue(!given.isBlank(), "skipped: give OpenCV's sample film with -Dfloorgauge.vtest=FILE");
        return Path.of(given);
    }

    /** Its brick wall has rows enough for all lines of a court, were the court but flat enough. */
    @Test
    void noCourtIsSeenInTheYard() {
        List<Mat> frames = new ArrayList<>();
        try (FilmReader reader = FilmReader.open(film());
                FilmFrame frame = new FilmFrame()) {
            while (reader.read(frame) && frame.timeSeconds() < 2) {
                if (frame.timeSeconds() >= 0.25 * frames.size()) {
                    frames.add(frame.bgr().clone());
                }
            }
            CourtCalibration court = CourtCalibrator.fromLines(Optional.of(RuleSet.fiba()), frames);
            assertThat(court.status()).as(court.reason()).isEqualTo(CalibrationStatus.NONE);
            assertThat(court.reason()).startsWith("No court could be placed: at best ");
        } finally {
            frames.forEach(Mat::release);
        }
    }

    @Test
    void peopleAreTrackedThroughTheYard() throws IOException {
        Path film = film();
        CourtCalibration yard = yard();
        // The plane's scale is nominal, and who walks by plays for nobody.
        TrackingSettings settings = TrackingSettings.defaults()
                .withCourtMargin(30)
                .withDetectionInterval(0.2)
                .withEveryone();
        TrackedFilm tracked;
        try (FilmTracker tracker = new FilmTracker(settings)) {
            tracked = tracker.track(film, yard, (t, d) -> {});
        }
        FilmTracks tracks = tracked.tracks();
        OverlaySheet.write(film, tracks, Map.of(), yard, 0, 66, 12, 2, 760, Path.of("target/film/vtest.png"));
        List<EndSheet.End> ends = EndSheet.ends(tracks, WIDTH, HEIGHT);
        EndSheet.write(film, tracks, ends, Path.of("target/film/vtest-ends.png"));
        long clear = ends.stream().filter(e -> !e.begins() && e.clear()).count();
        System.out.printf(
                Locale.ROOT,
                "vtest: %d tracks begin or end inside the picture, %d end in the clear%n",
                ends.size(),
                clear);
        double longest = tracks.players().stream()
                .mapToDouble(VtestFilmTest::seconds)
                .max()
                .orElse(0);
        long sightings = tracks.players().stream()
                .mapToLong(p -> p.observations().size())
                .sum();
        System.out.printf(
                Locale.ROOT,
                "vtest: %d tracks, mean %.1f s, longest %.1f s, %.1f people a frame, static camera %s%n",
                tracks.players().size(),
                tracks.players().stream()
                        .mapToDouble(VtestFilmTest::seconds)
                        .average()
                        .orElse(0),
                longest,
                (double) sightings / tracks.frameTimesSeconds().size(),
                tracked.staticCamera());
        assertThat(tracks.frameTimesSeconds()).hasSize(795);
        assertThat(tracked.staticCamera()).isTrue();
        assertThat(longest).isGreaterThan(15);
        assertThat((double) sightings / tracks.frameTimesSeconds().size()).isBetween(3.0, 12.0);
    }

    private static double seconds(PlayerTrack track) {
        return track.observations().get(track.observations().size() - 1).timeSeconds()
                - track.observations().get(0).timeSeconds();
    }
}
