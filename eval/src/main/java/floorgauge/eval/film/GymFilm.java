package floorgauge.eval.film;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.ImageBox;
import floorgauge.eval.tracking.BoxSimilarity;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.eval.tracking.Sighting;
import floorgauge.eval.tracking.TrackFrame;
import floorgauge.eval.tracking.TrackSequence;
import floorgauge.eval.tracking.TrackingScores;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * The TrackID3x3 gym clips (Yamada and others, 2025, arXiv 2503.18282), three against three from a fixed camera, boxes labelled
 * at 1280 x 720 and 20 frames a second; one of them as a film of 640 x 360 that the data set's authors drew over. Two maps
 * cover its lower middle: boxes of which they hide more than a tenth are left out of the truth, and so is what is found there.
 *
 * @param folder with the data set's files
 */
public record GymFilm(Path folder) {

    /** Of the labels and of the film. */
    public static final double FRAMES_PER_SECOND = 20;

    /** Width in pixels of the pictures that were labelled. */
    public static final int LABEL_WIDTH = 1280;

    private static final int LABEL_HEIGHT = 720;
    private static final int FILM_WIDTH = 640;
    private static final double MOST_COVERED = 0.1;

    /** The maps with their captions, in the film's own pixels, read off a frame. */
    private static final List<ImageBox> MAPS =
            List.of(new ImageBox(171, 256, 128, 104), new ImageBox(341, 256, 128, 104));

    public GymFilm {
        Objects.requireNonNull(folder, "folder");
    }

    /** The one clip whose pictures are at hand. */
    public Path film() {
        return folder.resolve("s1t1-drawn-over.gif");
    }

    /** The court in the film. */
    public CourtCalibration court() throws IOException {
        return court(FILM_WIDTH);
    }

    /**
     * The data set's homography, for pictures of a width. It maps to centimetres from a corner of the painted half court, along
     * the length from the end line and along the width. Seen from the camera the end line lies beyond and the width runs to the
     * right, so in the court frame both count down from the corner (14, 7.5).
     */
    public CourtCalibration court(int width) throws IOException {
        JsonNode rows = new ObjectMapper()
                .readTree(folder.resolve("court-points.json").toFile())
                .get("homography_px_to_court_cm");
        RuleSet rules = RuleSet.fiba();
        double scale = (double) LABEL_WIDTH / width;
        // The centre of the top left pixel is (0, 0) in both sizes.
        double shift = (scale - 1) / 2;
        double[] result = new double[9];
        for (int i = 0; i < 3; i++) {
            double corner = i == 0 ? rules.lengthMetres() / 2 : rules.widthMetres() / 2;
            double[] row = new double[3];
            for (int j = 0; j < 3; j++) {
                double last = rows.get(2).get(j).doubleValue();
                row[j] = i == 2
                        ? last
                        : corner * last - 0.01 * rows.get(i).get(j).doubleValue();
            }
            result[3 * i] = row[0] * scale;
            result[3 * i + 1] = row[1] * scale;
            result[3 * i + 2] = (row[0] + row[1]) * shift + row[2];
        }
        return CourtCalibration.known(rules, result, width, width * LABEL_HEIGHT / LABEL_WIDTH);
    }

    /** Boxes of what was found on the film against the labels that no map hides. */
    public TrackingScores scores(FilmTracks tracks) {
        TrackSequence<ImageBox> truth = labels();
        TrackSequence<ImageBox> seen = kept(TrackSequence.boxes(tracks), byFrame(truth));
        return TrackingScores.of(visibleLabels(), seen, new BoxSimilarity());
    }

    /** The labels that no map hides, in the film's pixels. */
    public TrackSequence<ImageBox> visibleLabels() {
        TrackSequence<ImageBox> truth = labels();
        return kept(truth, byFrame(truth));
    }

    private static Map<Long, List<Sighting<ImageBox>>> byFrame(TrackSequence<ImageBox> boxes) {
        Map<Long, List<Sighting<ImageBox>>> frames = new HashMap<>();
        boxes.frames().forEach(f -> frames.put(f.frame(), f.sightings()));
        return frames;
    }

    /** All labels in the film's pixels. */
    public TrackSequence<ImageBox> labels() {
        double scale = (double) FILM_WIDTH / LABEL_WIDTH;
        TrackSequence<ImageBox> large =
                MotChallengeFile.read(folder.resolve("boxes/s1t1.txt")).boxes(FRAMES_PER_SECOND, -1);
        return new TrackSequence<>(large.frames().stream()
                .map(f -> new TrackFrame<>(
                        f.frame(),
                        f.timeSeconds(),
                        f.sightings().stream()
                                .map(s -> new Sighting<>(s.id(), scaled(s.place(), scale)))
                                .toList()))
                .toList());
    }

    private static ImageBox scaled(ImageBox b, double scale) {
        return new ImageBox(b.left() * scale, b.top() * scale, b.width() * scale, b.height() * scale);
    }

    private static TrackSequence<ImageBox> kept(
            TrackSequence<ImageBox> boxes, Map<Long, List<Sighting<ImageBox>>> labels) {
        return new TrackSequence<>(boxes.frames().stream()
                .map(f -> new TrackFrame<>(
                        f.frame(),
                        f.timeSeconds(),
                        f.sightings().stream()
                                .filter(s -> !hidden(s.place(), labels.getOrDefault(f.frame(), List.of())))
                                .toList()))
                .toList());
    }

    /** Whether a map hides the box, or the label that it lies on best. */
    private static boolean hidden(ImageBox box, List<Sighting<ImageBox>> labels) {
        double most = 0;
        ImageBox best = box;
        for (Sighting<ImageBox> label : labels) {
            double overlap = box.intersectionOverUnion(label.place());
            if (overlap > most) {
                most = overlap;
                best = label.place();
            }
        }
        return covered(box) || covered(best);
    }

    private static boolean covered(ImageBox box) {
        return MAPS.stream().mapToDouble(m -> m.intersectionArea(box)).sum() > MOST_COVERED * box.area();
    }

    /** A published tracker on all clips, as an anchor: its results come with the data set. */
    public TrackingScores published() throws IOException {
        TrackingScores all = TrackingScores.none();
        try (Stream<Path> files = Files.list(folder.resolve("boxes"))) {
            for (Path truth : files.sorted().toList()) {
                MotChallengeFile expected = MotChallengeFile.read(truth);
                MotChallengeFile came = MotChallengeFile.read(
                        folder.resolve("other-tracker").resolve(truth.getFileName()), MotChallengeFile.FirstFrame.ZERO);
                all = all.plus(TrackingScores.of(
                        expected.boxes(FRAMES_PER_SECOND, came.lastFrame()),
                        came.boxes(FRAMES_PER_SECOND, expected.lastFrame()),
                        new BoxSimilarity()));
            }
        }
        return all;
    }
}
