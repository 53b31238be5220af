package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Body;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerObservation;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** A player who moves, a coach beside the court, a poster on a wall, a glimpse, and a second box: each with its reason. */
class FateBookTest {

    private static final double STEP_SECONDS = 0.08;
    private static final int LOOKS = 100;

    private static Sighting at(int look, double x, double y, double moving) {
        FloorEstimate foot = new FloorEstimate(new FloorPoint(x, y), FloorCovariance.isotropic(0.1));
        ImageBox box = new ImageBox(100 + 20 * x, 100 + 10 * y, 20, 50);
        return new Sighting(
                new PlayerObservation(
                        look,
                        look * STEP_SECONDS,
                        foot,
                        FootSource.ANKLES,
                        Optional.of(box),
                        Optional.empty(),
                        Body.UNSEEN,
                        0.8),
                Optional.of(TestSightings.WHITE),
                OptionalDouble.of(moving));
    }

    private static TrackedFilm film() {
        OfflineTracker tracker = new OfflineTracker(TrackingSettings.defaults(), 0.4, RuleSet.fiba());
        for (int look = 0; look < LOOKS; look++) {
            List<Sighting> seen = new ArrayList<>(
                    List.of(at(look, 2 + 0.05 * look, 0, 0.5), at(look, 5, 8.2, 0.4), at(look, 13, 7, 0)));
            if (look == 40) {
                seen.add(at(look, 12, -6, 0.5));
            }
            tracker.looked(look, look * STEP_SECONDS, seen);
            tracker.dropped(List.of(
                    new DetectionFate(look, look * STEP_SECONDS, new ImageBox(1, 1, 10, 20), 0.5, Fate.SECOND_BOX, 0)));
        }
        return tracker.tracked(true);
    }

    @Test
    void noFilmNoFates() {
        assertThat(new OfflineTracker(TrackingSettings.defaults(), 0.4, RuleSet.fiba())
                        .tracked(true)
                        .fates())
                .isEmpty();
    }

    @Test
    void everyBoxHasAFateAndAReason() {
        TrackedFilm film = film();
        assertThat(film.tracks().players()).hasSize(1);
        Map<Fate, Long> counts =
                film.fates().stream().collect(Collectors.groupingBy(DetectionFate::fate, Collectors.counting()));
        assertThat(counts)
                .containsEntry(Fate.FOLLOWED, (long) LOOKS)
                .containsEntry(Fate.OUTSIDE_THE_LINES, (long) LOOKS)
                .containsEntry(Fate.NEVER_MOVED, (long) LOOKS)
                .containsEntry(Fate.SECOND_BOX, (long) LOOKS)
                .containsEntry(Fate.SEEN_ONCE, 1L)
                .hasSize(5);
    }

    @Test
    void fatesComeInOrderOfTimeAndNameTheTrack() {
        List<DetectionFate> fates = film().fates();
        for (int i = 1; i < fates.size(); i++) {
            assertThat(fates.get(i).timeSeconds())
                    .isGreaterThanOrEqualTo(fates.get(i - 1).timeSeconds());
        }
        assertThat(fates.stream().filter(f -> f.fate() == Fate.FOLLOWED)).allMatch(f -> f.track() == 1);
    }

    @Test
    void aTrackWithoutBeingFollowedIsRefused() {
        ImageBox box = new ImageBox(0, 0, 1, 1);
        assertThatThrownBy(() -> new DetectionFate(0, 0, box, 0.5, Fate.TOO_BRIEF, 3))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
