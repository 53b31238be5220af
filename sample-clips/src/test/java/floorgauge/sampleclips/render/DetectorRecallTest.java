package floorgauge.sampleclips.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.track.ImageBox;
import floorgauge.sampleclips.render.camera.CameraStyle;
import floorgauge.sampleclips.render.picture.FrameRenderer;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.truth.PersonTruth;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import floorgauge.vision.network.Detection;
import floorgauge.vision.network.DetectorSettings;
import floorgauge.vision.network.ModelFolder;
import floorgauge.vision.network.PersonDetector;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Whether rendered players look like people to the person detector: its recall by their height in pixels, on rendered film at
 * 1280 x 720 and at 640 x 360, beside its recall on the labelled players of the gym film (TrackID3x3, Yamada and others, 2025,
 * arXiv 2503.18282; 640 x 360). The networks' own weights were trained on rendered pictures too; for weights that were not, give
 * their folder.
 *
 * <pre>mvn -B test -pl sample-clips -am -Dtest=DetectorRecallTest -Dsurefire.failIfNoSpecifiedTests=false \
 *     -Dfloorgauge.gym=FOLDER [-Dfloorgauge.otherModels=FOLDER]</pre>
 */
class DetectorRecallTest {

    private static final double MIN_SCORE = 0.25;
    private static final double OVERLAP = 0.5;
    private static final int[] HEIGHTS = {0, 40, 50, 60, 75, 95, 120, 160};
    private static final int GYM_FRAME_STEP = 8;
    private static final double[] TIMES = {0.5, 2.0, 3.5, 5.0, 6.5};
    private static final int MOST_PLAYER_ID = 10;

    /** Found and all players by the least height of their class. */
    private static final class Recall {

        private final TreeMap<Integer, int[]> classes = new TreeMap<>();

        void add(List<ImageBox> players, List<Detection> found) {
            List<Detection> left = new ArrayList<>(found);
            for (ImageBox player : players) {
                int least = HEIGHTS[0];
                for (int height : HEIGHTS) {
                    least = player.height() >= height ? height : least;
                }
                int[] counts = classes.computeIfAbsent(least, h -> new int[2]);
                counts[1]++;
                Optional<Detection> match = left.stream()
                        .filter(d -> d.score() >= MIN_SCORE && overlap(d.box(), player) >= OVERLAP)
                        .findFirst();
                if (match.isPresent()) {
                    counts[0]++;
                    left.remove(match.get());
                }
            }
        }

        private static double overlap(ImageBox a, ImageBox b) {
            double width = Math.min(a.left() + a.width(), b.left() + b.width()) - Math.max(a.left(), b.left());
            double height = Math.min(a.top() + a.height(), b.top() + b.height()) - Math.max(a.top(), b.top());
            double shared = Math.max(0, width) * Math.max(0, height);
            return shared / (a.area() + b.area() - shared);
        }

        double all() {
            int found = classes.values().stream().mapToInt(c -> c[0]).sum();
            int players = classes.values().stream().mapToInt(c -> c[1]).sum();
            return (double) found / players;
        }

        void print(String what) {
            classes.forEach((least, counts) -> System.out.printf(
                    Locale.ROOT,
                    "%s, players from %d px: recall %.2f of %d%n",
                    what,
                    least,
                    (double) counts[0] / counts[1],
                    counts[1]));
            System.out.printf(Locale.ROOT, "%s, all: recall %.2f%n", what, all());
        }
    }

    @Test
    void renderedPlayersAreFoundAsRealOnesAre() throws IOException {
        String gym = System.getProperty("floorgauge.gym", "");
        assumeTrue(!gym.isBlank(), "give -Dfloorgauge.gym to measure the detector on real players");
        String other = System.getProperty("floorgauge.otherModels", "");
        OpenCv.load();
        ModelFolder models = other.isBlank() ? ModelFolder.standard() : new ModelFolder(Path.of(other));
        try (PersonDetector detector = new PersonDetector(models, new DetectorSettings(MIN_SCORE, 0.6))) {
            Recall real = real(detector, Path.of(gym));
            real.print("gym film");
            Recall whole = new Recall();
            Recall half = new Recall();
            rendered(detector, "pin-down-sound", CameraStyle.TRIPOD_SIDE, 31, whole, half);
            rendered(detector, "motion-weak-sound", CameraStyle.TRIPOD_HIGH, 32, whole, half);
            rendered(detector, "high-ball-screen-sound", CameraStyle.OPERATOR, 33, whole, half);
            rendered(detector, "floppy-sound", CameraStyle.PHONE, 34, whole, half);
            whole.print("rendered, 1280 x 720");
            half.print("rendered, 640 x 360");
            assertThat(whole.all()).isGreaterThan(0.6);
        }
    }

    private static Recall real(PersonDetector detector, Path gym) throws IOException {
        Recall recall = new Recall();
        Map<Long, List<ImageBox>> labels = new HashMap<>();
        for (String line : Files.readAllLines(gym.resolve("boxes").resolve("s1t1.txt"))) {
            double[] v = new double[6];
            String[] words = line.split(",");
            for (int i = 0; i < v.length; i++) {
                v[i] = Double.parseDouble(words[i]);
            }
            labels.computeIfAbsent((long) v[0] - 1, f -> new ArrayList<>())
                    .add(new ImageBox(v[2] / 2 - 0.5, v[3] / 2 - 0.5, v[4] / 2, v[5] / 2));
        }
        try (FilmReader film = FilmReader.open(gym.resolve("s1t1-drawn-over.gif"));
                FilmFrame frame = new FilmFrame()) {
            while (film.read(frame)) {
                if (frame.index() % GYM_FRAME_STEP == 0) {
                    recall.add(labels.get(frame.index()), detector.detect(frame.bgr()));
                }
            }
        }
        return recall;
    }

    private static void rendered(
            PersonDetector detector, String name, CameraStyle style, long seed, Recall whole, Recall half) {
        PlayedScene scene = ScenarioLibrary.load(name, seed);
        RenderPlan plan = RenderPlan.of(scene, scene.end(), style, seed);
        try (FrameRenderer renderer = new FrameRenderer(plan.scene(), plan.gym(), plan.path(), plan.settings())) {
            Mat picture = new Mat(renderer.height(), renderer.width(), CvType.CV_8UC3);
            Mat small = new Mat();
            for (int i = 0; i < TIMES.length; i++) {
                picture.put(0, 0, renderer.render(i, TIMES[i]));
                List<ImageBox> players = renderer.truth(i, TIMES[i]).people().stream()
                        .filter(p -> p.state().person().id() <= MOST_PLAYER_ID)
                        .map(PersonTruth::box)
                        .flatMap(Optional::stream)
                        .toList();
                whole.add(players, detector.detect(picture));
                Size size = new Size(renderer.width() / 2.0, renderer.height() / 2.0);
                Imgproc.resize(picture, small, size, 0, 0, Imgproc.INTER_AREA);
                half.add(
                        players.stream()
                                .map(b -> new ImageBox(
                                        b.left() / 2 - 0.25, b.top() / 2 - 0.25, b.width() / 2, b.height() / 2))
                                .toList(),
                        detector.detect(small));
            }
            small.release();
            picture.release();
        }
    }
}
