package floorgauge.vision.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.calibration.OpenCv;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.Mat;
import org.opencv.core.Point;
import org.opencv.core.Scalar;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;

/**
 * What the networks find on real film and photographs, printed as the tables of the networks' cards. Needs the folders of
 * others' pictures:
 *
 * <pre>mvn -B test -pl vision -am -Dtest=RealPicturesTest -Dsurefire.failIfNoSpecifiedTests=false \
 *     -Dfloorgauge.gym=FOLDER -Dfloorgauge.vtest=FILE -Dfloorgauge.people=FOLDER</pre>
 */
class RealPicturesTest {

    private static final double[] MIN_SCORES = {0.15, 0.2, 0.25, 0.3, 0.4};
    private static final double[] SCALES = {1, 1.5, 2};
    private static final int GYM_FRAME_STEP = 16;
    /** Every tenth photograph by name, which the detector was not trained on. */
    private static final int HELD_OUT_STEP = 10;

    /** A flagged region wider than this over its height holds a crowd; the other flagged ones are single people. */
    private static final double CROWD_WIDTH_OVER_HEIGHT = 1.5;

    private static final String SKIPPED = " is not given; this test is skipped";

    @BeforeAll
    static void load() {
        OpenCv.load();
    }

    /** The labels are at twice the film's size; six players a frame; others in the hall are not labelled. */
    @Test
    void playersOfTheGymFilmAreFound() throws IOException {
        Path gym = given("floorgauge.gym");
        Map<Long, List<ImageBox>> labels = gymLabels(gym.resolve("boxes").resolve("s1t1.txt"));
        Map<Double, Map<Double, BoxScore>> scores = new TreeMap<>();
        try (PersonDetector detector = detector();
                FilmReader film = FilmReader.open(gym.resolve("s1t1-drawn-over.gif"));
                FilmFrame frame = new FilmFrame()) {
            while (film.read(frame)) {
                if (frame.index() % GYM_FRAME_STEP == 0) {
                    for (double scale : SCALES) {
                        List<Detection> found = detector.detect(frame.bgr(), scale);
                        count(scores.computeIfAbsent(scale, s -> table()), labels.get(frame.index()), found);
                    }
                }
            }
        }
        scores.forEach((scale, table) -> print("gym film, scale " + scale, table));
        assertThat(scores.get(1.0).get(0.25).recall()).isGreaterThan(0.8);
        assertThat(scores.get(1.0).get(0.3).precision()).isGreaterThan(0.5);
    }

    /** Six people are in full view a minute into the film, counted by eye. */
    @Test
    void everybodyInTheStreetIsFound() throws IOException {
        Path street = given("floorgauge.vtest");
        List<Detection> found = List.of();
        List<Pose> poses = List.of();
        Mat picture = new Mat();
        try (PersonDetector detector = detector();
                PoseEstimator estimator = new PoseEstimator(ModelFolder.standard(), PoseQuality.FAST);
                FilmReader film = FilmReader.open(street);
                FilmFrame frame = new FilmFrame()) {
            while (film.read(frame) && frame.timeSeconds() < 60) {
                frame.bgr().copyTo(picture);
            }
            found = detector.detect(picture).stream()
                    .filter(d -> d.score() >= 0.4)
                    .toList();
            poses = estimator.estimate(
                    picture, found.stream().map(Detection::box).toList());
        }
        double shift = medianShiftInHeights(picture, found, poses);
        System.out.printf(Locale.ROOT, "street film, joints in bfloat16: median shift %.4f of the height%n", shift);
        draw(picture, found, poses, Path.of("target", "street.png"));
        assertThat(found).hasSize(6);
        assertThat(shift).isBetween(1e-9, 0.01);
        for (int i = 0; i < found.size(); i++) {
            assertThat(poses.get(i).at(Joint.LEFT_ANKLE).position().y())
                    .isGreaterThan(poses.get(i).at(Joint.NOSE).position().y());
        }
    }

    private static double medianShiftInHeights(Mat picture, List<Detection> found, List<Pose> exact) {
        List<ImageBox> boxes = found.stream().map(Detection::box).toList();
        List<Double> shifts = new ArrayList<>();
        try (PoseEstimator brief = new PoseEstimator(ModelFolder.standard(), PoseQuality.FAST, Precision.BFLOAT16)) {
            List<Pose> rounded = brief.estimate(picture, boxes);
            for (int i = 0; i < boxes.size(); i++) {
                for (Joint joint : Joint.values()) {
                    double pixels = exact.get(i)
                            .at(joint)
                            .position()
                            .distanceTo(rounded.get(i).at(joint).position());
                    shifts.add(pixels / boxes.get(i).height());
                }
            }
        }
        shifts.sort(Comparator.naturalOrder());
        return shifts.get(shifts.size() / 2);
    }

    /** The photographs kept out of training, at their own size, without those that show a crowd. */
    @Test
    void peopleOnPhotographsAreFound() throws IOException {
        Path people = given("floorgauge.people");
        JsonNode labels =
                new ObjectMapper().readTree(people.resolve("annotations.json").toFile());
        Map<Integer, List<ImageBox>> boxes = photoLabels(labels);
        Map<Double, BoxScore> table = table();
        Map<Double, BoxScore> rounded = table();
        List<Double> shifts = new ArrayList<>();
        try (PersonDetector detector = detector();
                PersonDetector brief = detector(Precision.BFLOAT16)) {
            List<JsonNode> images = new ArrayList<>();
            labels.get("images").forEach(images::add);
            images.sort(Comparator.comparing(image -> image.get("file_name").asText()));
            for (int i = 0; i < images.size(); i += HELD_OUT_STEP) {
                JsonNode image = images.get(i);
                List<ImageBox> own = boxes.get(image.get("id").asInt());
                if (own != null) {
                    Path file = people.resolve("images")
                            .resolve(image.get("file_name").asText());
                    Mat picture = Imgcodecs.imread(file.toString(), Imgcodecs.IMREAD_COLOR);
                    List<Detection> exact = detector.detect(picture);
                    List<Detection> shorter = brief.detect(picture);
                    count(table, own, exact);
                    count(rounded, own, shorter);
                    addShifts(exact, shorter, shifts);
                }
            }
        }
        print("photographs", table);
        print("photographs, bfloat16", rounded);
        shifts.sort(Comparator.naturalOrder());
        double median = shifts.get(shifts.size() / 2);
        double most = shifts.get(shifts.size() * 95 / 100);
        System.out.printf(
                Locale.ROOT,
                "boxes in bfloat16: edges shift by %.4f of the height in the median, 95 in 100 below %.4f%n",
                median,
                most);
        assertThat(table.get(0.3).recall()).isGreaterThan(0.5);
        assertThat(table.get(0.3).precision()).isGreaterThan(0.7);
        assertThat(rounded.get(0.3).recall()).isCloseTo(table.get(0.3).recall(), within(0.03));
        assertThat(rounded.get(0.3).precision()).isCloseTo(table.get(0.3).precision(), within(0.03));
        assertThat(median).isBetween(1e-9, 0.01);
    }

    /** The edge that moved most, as a share of the height, of each box that both found. */
    private static void addShifts(List<Detection> exact, List<Detection> rounded, List<Double> shifts) {
        for (Detection one : exact) {
            if (one.score() >= 0.3) {
                rounded.stream()
                        .map(Detection::box)
                        .filter(box -> box.intersectionOverUnion(one.box()) >= 0.5)
                        .mapToDouble(
                                box -> mostMoved(one.box(), box) / one.box().height())
                        .min()
                        .ifPresent(shifts::add);
            }
        }
    }

    private static double mostMoved(ImageBox one, ImageBox other) {
        return Math.max(
                Math.max(Math.abs(one.left() - other.left()), Math.abs(one.right() - other.right())),
                Math.max(Math.abs(one.top() - other.top()), Math.abs(one.bottom() - other.bottom())));
    }

    /**
     * Joints of labelled people of at least 80 pixels, against where the labels say: how far above, in the median and as a share of the
     * box's height. A network that puts ankles too high moves everyone away from a low camera.
     */
    @Test
    void jointsOnPhotographsAreAsHighAsTheLabelsSay() throws IOException {
        Path people = given("floorgauge.people");
        JsonNode labels =
                new ObjectMapper().readTree(people.resolve("annotations.json").toFile());
        Map<Integer, List<JsonNode>> byImage = new TreeMap<>();
        for (JsonNode label : labels.get("annotations")) {
            if (label.path("num_keypoints").asInt() >= 14
                    && label.get("bbox").get(3).asDouble() >= 80) {
                byImage.computeIfAbsent(label.get("image_id").asInt(), i -> new ArrayList<>())
                        .add(label);
            }
        }
        Map<Joint, List<Double>> above = new TreeMap<>();
        try (PoseEstimator estimator = new PoseEstimator(ModelFolder.standard(), PoseQuality.FAST)) {
            for (JsonNode image : labels.get("images")) {
                List<JsonNode> own = byImage.getOrDefault(image.get("id").asInt(), List.of());
                Path file =
                        people.resolve("images").resolve(image.get("file_name").asText());
                if (!own.isEmpty()) {
                    addHeights(estimator, Imgcodecs.imread(file.toString(), Imgcodecs.IMREAD_COLOR), own, above);
                }
            }
        }
        above.values().forEach(list -> list.sort(Comparator.naturalOrder()));
        above.forEach((joint, list) -> System.out.printf(
                Locale.ROOT,
                "photographs, %s: median %+.4f of the height above its label, middle half %+.4f to %+.4f, %d people%n",
                joint,
                list.get(list.size() / 2),
                list.get(list.size() / 4),
                list.get(list.size() * 3 / 4),
                list.size()));
        for (Joint joint : List.of(Joint.LEFT_ANKLE, Joint.RIGHT_ANKLE)) {
            List<Double> list = above.get(joint);
            assertThat(list.get(list.size() / 2)).isBetween(-0.02, 0.02);
        }
    }

    /**
     * How high over the lower edge of the box people mark the lower ankle of someone whose legs are in view: what feet are placed
     * by ({@code FootFinder.ANKLE_HEIGHT}, 0.056, and the toe, 0.02, by which the box ends lower than a person stands).
     */
    @Test
    void anklesAreMarkedWhereFeetArePlacedBy() throws IOException {
        JsonNode labels = new ObjectMapper()
                .readTree(given("floorgauge.people").resolve("annotations.json").toFile());
        List<Double> shares = new ArrayList<>();
        for (JsonNode label : labels.get("annotations")) {
            JsonNode box = label.get("bbox");
            JsonNode joints = label.path("keypoints");
            double height = box.get(3).asDouble();
            int left = 3 * Joint.LEFT_ANKLE.ordinal();
            int right = 3 * Joint.RIGHT_ANKLE.ordinal();
            boolean upright = height >= 120 && height >= 1.9 * box.get(2).asDouble();
            if (upright
                    && joints.path(left + 2).asInt() == 2
                    && joints.path(right + 2).asInt() == 2) {
                double ankle = Math.max(
                        joints.get(left + 1).asDouble(), joints.get(right + 1).asDouble());
                shares.add((box.get(1).asDouble() + height - ankle) / height);
            }
        }
        shares.sort(Comparator.naturalOrder());
        double middle = shares.get(shares.size() / 2);
        System.out.printf(
                Locale.ROOT,
                "photographs: the lower ankle is marked %.3f of the height over the box's lower edge (median of %d people)%n",
                middle,
                shares.size());
        assertThat(shares.size()).isGreaterThan(50);
        assertThat(middle).isBetween(0.056 + 0.02 - 0.01, 0.056 + 0.02 + 0.01);
    }

    private static void addHeights(
            PoseEstimator estimator, Mat picture, List<JsonNode> people, Map<Joint, List<Double>> above) {
        List<ImageBox> boxes = people.stream()
                .map(p -> p.get("bbox"))
                .map(b -> new ImageBox(
                        b.get(0).asDouble(),
                        b.get(1).asDouble(),
                        b.get(2).asDouble(),
                        b.get(3).asDouble()))
                .toList();
        List<Pose> poses = estimator.estimate(picture, boxes);
        for (int i = 0; i < boxes.size(); i++) {
            JsonNode joints = people.get(i).get("keypoints");
            for (Joint joint : Joint.values()) {
                int at = 3 * joint.ordinal();
                Keypoint seen = poses.get(i).at(joint);
                if (joints.get(at + 2).asInt() == 2 && seen.score() >= 0.3) {
                    above.computeIfAbsent(joint, j -> new ArrayList<>())
                            .add((joints.get(at + 1).asDouble()
                                            - seen.position().y())
                                    / boxes.get(i).height());
                }
            }
        }
    }

    private static PersonDetector detector() {
        return detector(Precision.SINGLE);
    }

    private static PersonDetector detector(Precision precision) {
        return new PersonDetector(ModelFolder.standard(), new DetectorSettings(MIN_SCORES[0], 0.6), precision);
    }

    private static Path given(String property) {
        String value = System.getProperty(property, "");
        assumeFalse(value.isEmpty(), "-D" + property + SKIPPED);
        return Path.of(value);
    }

    private static Map<Double, BoxScore> table() {
        Map<Double, BoxScore> table = new TreeMap<>();
        for (double score : MIN_SCORES) {
            table.put(score, new BoxScore());
        }
        return table;
    }

    private static void count(Map<Double, BoxScore> table, List<ImageBox> labels, List<Detection> found) {
        table.forEach((minScore, counts) -> counts.add(
                labels, found.stream().filter(d -> d.score() >= minScore).toList()));
    }

    private static void print(String what, Map<Double, BoxScore> table) {
        table.forEach((score, counts) ->
                System.out.printf(Locale.ROOT, "%s, score at least %.2f: %s%n", what, score, counts));
    }

    private static Map<Long, List<ImageBox>> gymLabels(Path file) throws IOException {
        Map<Long, List<ImageBox>> labels = new HashMap<>();
        for (String line : Files.readAllLines(file)) {
            double[] v = new double[6];
            String[] words = line.split(",");
            for (int i = 0; i < v.length; i++) {
                v[i] = Double.parseDouble(words[i]);
            }
            labels.computeIfAbsent((long) v[0] - 1, f -> new ArrayList<>())
                    .add(new ImageBox(v[2] / 2 - 0.5, v[3] / 2 - 0.5, v[4] / 2, v[5] / 2));
        }
        return labels;
    }

    private static Map<Integer, List<ImageBox>> photoLabels(JsonNode labels) {
        Map<Integer, List<ImageBox>> boxes = new HashMap<>();
        Set<Integer> crowded = new HashSet<>();
        for (JsonNode label : labels.get("annotations")) {
            JsonNode box = label.get("bbox");
            boolean wide =
                    box.get(2).asDouble() > CROWD_WIDTH_OVER_HEIGHT * box.get(3).asDouble();
            if (label.get("iscrowd").asInt() == 1 && wide) {
                crowded.add(label.get("image_id").asInt());
            } else if (box.get(2).asDouble() > 0 && box.get(3).asDouble() > 0) {
                boxes.computeIfAbsent(label.get("image_id").asInt(), i -> new ArrayList<>())
                        .add(new ImageBox(
                                box.get(0).asDouble() - 0.5,
                                box.get(1).asDouble() - 0.5,
                                box.get(2).asDouble(),
                                box.get(3).asDouble()));
            }
        }
        boxes.keySet().removeAll(crowded);
        boxes.values().forEach(list -> list.sort(Comparator.comparingDouble(ImageBox::left)));
        return boxes;
    }

    private static void draw(Mat picture, List<Detection> found, List<Pose> poses, Path file) {
        for (int i = 0; i < found.size(); i++) {
            ImageBox box = found.get(i).box();
            Imgproc.rectangle(
                    picture,
                    new Point(box.left(), box.top()),
                    new Point(box.right(), box.bottom()),
                    new Scalar(0, 220, 0));
            for (Keypoint joint : poses.get(i).keypoints()) {
                Imgproc.circle(
                        picture,
                        new Point(joint.position().x(), joint.position().y()),
                        2,
                        new Scalar(0, 255 * joint.score(), 255),
                        Imgproc.FILLED);
            }
        }
        Imgcodecs.imwrite(file.toString(), picture);
    }
}
