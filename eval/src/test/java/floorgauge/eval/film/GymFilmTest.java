package floorgauge.eval.film;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.ImageBox;
import floorgauge.eval.tracking.Sighting;
import floorgauge.eval.tracking.TrackFrame;
import floorgauge.eval.tracking.TrackingScores;
import floorgauge.vision.tracking.FilmTracker;
import floorgauge.vision.tracking.TrackedFilm;
import floorgauge.vision.tracking.TrackingSettings;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * The whole chain on the one real practice film with labels, {@link GymFilm}: 640 x 360, 8-bit colours, with two maps of the floor
 * that hide the feet, or all, of whoever stands behind them.
 */
class GymFilmTest {

    @Test
    void playersAreFollowedThroughThePractice() throws IOException {
        GymFilm gym = GymClips.given();
        Path film = gym.film();
        CourtCalibration court = gym.court();
        TrackedFilm tracked;
        long start = System.nanoTime();
        try (FilmTracker tracker = new FilmTracker(TrackingSettings.defaults())) {
            tracked = tracker.track(film, court, (t, d) -> {});
        }
        double seconds = (System.nanoTime() - start) / 1e9;
        Map<Long, List<ImageBox>> boxes = new TreeMap<>();
        gym.labels()
                .frames()
                .forEach(f -> boxes.put(
                        f.frame(), f.sightings().stream().map(Sighting::place).toList()));
        OverlaySheet.write(film, tracked.tracks(), boxes, court, 0, 12, 14, 2, 900, Path.of("target/film/gym.png"));
        FailureSheet.write(film, tracked.tracks(), gym.visibleLabels(), Path.of("target/film/gym-failures.png"));
        TrackingScores scores = gym.scores(tracked.tracks());
        double floorError = medianFloorError(tracked.tracks(), gym);
        System.out.printf(
                Locale.ROOT,
                "gym: HOTA %.3f DetA %.3f AssA %.3f IDF1 %.3f switches %d misses %d false alarms %d;"
                        + " floor error median %.2f m; %d tracks; static camera %s; %.1f s%n",
                scores.hota().hota(),
                scores.hota().detectionAccuracy(),
                scores.hota().associationAccuracy(),
                scores.identity().idf1(),
                scores.clear().switches(),
                scores.clear().misses(),
                scores.clear().falseAlarms(),
                floorError,
                tracked.tracks().players().size(),
                tracked.staticCamera(),
                seconds);
        assertThat(tracked.staticCamera()).isTrue();
        // The aims of the project for this film, whose feet the maps often hide.
        assertThat(scores.hota().detectionAccuracy()).as("DetA").isGreaterThanOrEqualTo(0.60);
        assertThat(scores.identity().idf1()).as("IDF1").isGreaterThanOrEqualTo(0.75);
        assertThat(floorError).as("median floor error").isLessThanOrEqualTo(0.35);
    }

    /** Median distance on the floor of the label's lower middle and the foot point, over pairs of IoU at least 0.5. */
    private static double medianFloorError(FilmTracks tracks, GymFilm gym) throws IOException {
        CourtCalibration court = gym.court();
        Map<Long, TrackFrame<ImageBox>> truthAt = new TreeMap<>();
        gym.visibleLabels().frames().forEach(f -> truthAt.put(f.frame(), f));
        List<Double> errors = new ArrayList<>();
        tracks.frames().forEach(frame -> {
            Set<Integer> used = new HashSet<>();
            frame.players()
                    .forEach(p -> p.observation().box().ifPresent(box -> {
                        for (Sighting<ImageBox> label :
                                truthAt.get(frame.frame()).sightings()) {
                            if (box.intersectionOverUnion(label.place()) >= 0.5 && used.add(label.id())) {
                                FloorPoint at = court.floorAt(label.place().bottomCentre(), 0, 0)
                                        .mean();
                                errors.add(at.distanceTo(p.observation().foot().mean()));
                            }
                        }
                    }));
        });
        errors.sort(null);
        return errors.isEmpty() ? Double.NaN : errors.get(errors.size() / 2);
    }
}
