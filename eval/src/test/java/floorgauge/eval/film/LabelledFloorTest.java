package floorgauge.eval.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.Body;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerObservation;
import floorgauge.eval.tracking.BoxSimilarity;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.eval.tracking.TrackFrame;
import floorgauge.eval.tracking.TrackSequence;
import floorgauge.eval.tracking.TrackingScores;
import floorgauge.vision.body.FootFinder;
import floorgauge.vision.tracking.OfflineTracker;
import floorgauge.vision.tracking.Sighting;
import floorgauge.vision.tracking.TrackingSettings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Real players' labelled boxes as a detector with known faults would give them: shaken, missed for stretches, among false
 * alarms, without colours. Measures the tracking alone.
 */
class LabelledFloorTest {

    private static final long SEED = 31;

    /** How the labels are spoilt. */
    private record Faults(double shake, double missedShare, double missedSeconds, double falseAlarms) {}

    @Test
    void perfectBoxesKeepTheirIdentities() throws IOException {
        TrackingScores scores = allClips(new Faults(0, 0, 0, 0), TrackingSettings.defaults());
        print("labels as they are", scores);
        assertThat(scores.identity().idf1()).isGreaterThan(0.95);
        assertThat(scores.hota().detectionAccuracy()).isGreaterThan(0.95);
    }

    @Test
    void faultyBoxesMostlyKeepTheirIdentities() throws IOException {
        TrackingScores scores = allClips(new Faults(0.04, 0.2, 0.3, 0.3), TrackingSettings.defaults());
        print("shaken by 4 %, a fifth missed, 0.3 false alarms a frame", scores);
        assertThat(scores.identity().idf1()).isGreaterThan(0.65);
    }

    @Test
    void knowingThePlayersHelps() throws IOException {
        Faults faults = new Faults(0.04, 0.3, 0.5, 0.5);
        TrackingScores open = allClips(faults, TrackingSettings.defaults());
        TrackingScores closed = allClips(faults, TrackingSettings.defaults().withPlayersPerSide(3));
        print("a third missed, players not known", open);
        print("a third missed, three a side", closed);
        assertThat(closed.identity().idf1())
                .isGreaterThanOrEqualTo(open.identity().idf1());
    }

    private static void print(String what, TrackingScores s) {
        System.out.printf(
                java.util.Locale.ROOT,
                "%s: HOTA %.3f DetA %.3f AssA %.3f IDF1 %.3f switches %d false alarms %d misses %d%n",
                what,
                s.hota().hota(),
                s.hota().detectionAccuracy(),
                s.hota().associationAccuracy(),
                s.identity().idf1(),
                s.clear().switches(),
                s.clear().falseAlarms(),
                s.clear().misses());
    }

    private static TrackingScores allClips(Faults faults, TrackingSettings settings) throws IOException {
        TrackingScores sum = TrackingScores.none();
        try (Stream<Path> files = Files.list(GymClips.given().folder().resolve("boxes"))) {
            for (Path file : files.sorted().toList()) {
                TrackSequence<ImageBox> truth = MotChallengeFile.read(file).boxes(GymFilm.FRAMES_PER_SECOND, -1);
                FilmTracks tracks = track(truth, faults, settings);
                TrackingScores scores = TrackingScores.of(truth, TrackSequence.boxes(tracks), new BoxSimilarity());
                sum = sum.plus(scores);
            }
        }
        return sum;
    }

    private static FilmTracks track(TrackSequence<ImageBox> truth, Faults faults, TrackingSettings settings)
            throws IOException {
        CourtCalibration court = GymClips.given().court(GymFilm.LABEL_WIDTH);
        FootFinder feet = new FootFinder(court);
        OfflineTracker tracker = new OfflineTracker(settings, 0.4, court.rules());
        Random random = new Random(SEED);
        double[] hiddenUntil = new double[100];
        for (TrackFrame<ImageBox> frame : truth.frames()) {
            if (frame.frame() % 2 == 1) {
                tracker.passed(frame.frame(), frame.timeSeconds());
                continue;
            }
            List<ImageBox> boxes = new ArrayList<>();
            frame.sightings().forEach(s -> {
                if (frame.timeSeconds() >= hiddenUntil[s.id()]
                        && random.nextDouble() < faults.missedShare() * 0.1 / Math.max(0.1, faults.missedSeconds())) {
                    hiddenUntil[s.id()] = frame.timeSeconds() + 2 * faults.missedSeconds() * random.nextDouble();
                }
                if (frame.timeSeconds() >= hiddenUntil[s.id()]) {
                    boxes.add(shaken(s.place(), faults.shake(), random));
                }
            });
            if (random.nextDouble() < faults.falseAlarms()) {
                boxes.add(new ImageBox(200 + 800 * random.nextDouble(), 300 + 200 * random.nextDouble(), 50, 120));
            }
            tracker.looked(frame.frame(), frame.timeSeconds(), sightings(frame, boxes, feet));
        }
        return tracker.tracks();
    }

    private static List<Sighting> sightings(TrackFrame<ImageBox> frame, List<ImageBox> boxes, FootFinder feet) {
        List<Sighting> sightings = new ArrayList<>();
        for (ImageBox box : boxes) {
            feet.find(box, Optional.empty(), boxes)
                    .ifPresent(foot -> sightings.add(new Sighting(
                            new PlayerObservation(
                                    frame.frame(),
                                    frame.timeSeconds(),
                                    foot.position(),
                                    foot.source(),
                                    Optional.of(box),
                                    Optional.empty(),
                                    Body.UNSEEN,
                                    0.7),
                            Optional.empty(),
                            OptionalDouble.empty())));
        }
        return sightings;
    }

    private static ImageBox shaken(ImageBox box, double share, Random random) {
        double h = box.height();
        return new ImageBox(
                box.left() + share * h * random.nextGaussian(),
                box.top() + share * h * random.nextGaussian(),
                box.width() * (1 + share * random.nextGaussian()),
                h * (1 + share * random.nextGaussian()));
    }

    /** The data set's own floor tracks, cm, against the homography: the frames are read the right way round. */
    @Test
    void theHomographyGivesTheDataSetsOwnFloorTracks() throws IOException {
        GymFilm gym = GymClips.given();
        CourtCalibration court = gym.court(GymFilm.LABEL_WIDTH);
        TrackSequence<ImageBox> boxes =
                MotChallengeFile.read(gym.folder().resolve("boxes/s1t1.txt")).boxes(GymFilm.FRAMES_PER_SECOND, -1);
        List<String> lines = Files.readAllLines(gym.folder().resolve("court-tracks/s1t1.txt"));
        String[] first = lines.get(0).split(",");
        ImageBox box = boxes.frames().get(0).sightings().stream()
                .filter(s -> s.id() == (int) Double.parseDouble(first[1].trim()))
                .findFirst()
                .orElseThrow()
                .place();
        FloorPoint floor = court.floorAt(box.bottomCentre(), 0, 0).mean();
        double alongFromCorner = 100 * (14 - floor.xMetres());
        double acrossFromCorner = 100 * (7.5 - floor.yMetres());
        assertThat(alongFromCorner).isCloseTo(Double.parseDouble(first[2]), within(0.01));
        assertThat(acrossFromCorner).isCloseTo(Double.parseDouble(first[3]), within(0.01));
    }
}
