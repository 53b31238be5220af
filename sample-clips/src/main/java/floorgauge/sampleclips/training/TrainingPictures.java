package floorgauge.sampleclips.training;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import floorgauge.court.calibration.OpenCv;
import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.ImageBox;
import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.camera.CameraPath;
import floorgauge.sampleclips.render.camera.Lens;
import floorgauge.sampleclips.render.gym.Gym;
import floorgauge.sampleclips.render.picture.FrameRenderer;
import floorgauge.sampleclips.render.picture.RenderSettings;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.truth.BallTruth;
import floorgauge.sampleclips.truth.FrameTruth;
import floorgauge.sampleclips.truth.JointTruth;
import floorgauge.sampleclips.truth.PersonTruth;
import floorgauge.sampleclips.truth.Visibility;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfInt;
import org.opencv.imgcodecs.Imgcodecs;

/**
 * Writes pictures for training: three frames in a row one above the other (for the ball), the middle one alone (for
 * people), with {@code annotations.json} (COCO boxes and keypoints of each person) and {@code triples.json}
 * (balls: x, y, radius in pixels of one frame, visible share).
 *
 * <pre>java floorgauge.sampleclips.training.TrainingPictures DIR SCENES FIRST_SEED [LOOKS]</pre>
 *
 * Each scene is looked at LOOKS times (once, where not given), each with a gym, a camera and a moment of its own. Runs
 * with other seeds may go on side by side into folders of their own.
 */
public final class TrainingPictures {

    /** Scenario seeds from here on are never trained on. */
    public static final long FIRST_HELD_OUT_SEED = 1000;

    private static final int WIDTH = 512;
    private static final int HEIGHT = 288;
    private static final int JPEG_QUALITY = 82;
    /** Less of a person than this is left to the trainer to ignore. */
    private static final double LEAST_VISIBLE = 0.3;

    /** A ball of which less shows is as good as not there. */
    private static final double LEAST_BALL_VISIBLE = 0.03;

    private final Path folder;
    private final ObjectNode annotations = JsonNodeFactory.instance.objectNode();
    private final ArrayNode images = annotations.putArray("images");
    private final ArrayNode boxes = annotations.putArray("annotations");
    private final ArrayNode triples = JsonNodeFactory.instance.arrayNode();

    private TrainingPictures(Path folder) {
        this.folder = folder;
    }

    public static void main(String[] args) throws IOException {
        OpenCv.load();
        Path folder = Path.of(args[0]);
        int scenes = Integer.parseInt(args[1]);
        long firstSeed = Long.parseLong(args[2]);
        int looks = args.length > 3 ? Integer.parseInt(args[3]) : 1;
        if (firstSeed + scenes > FIRST_HELD_OUT_SEED) {
            throw new IllegalArgumentException(
                    "seeds from " + FIRST_HELD_OUT_SEED + " on are held out; lower FIRST_SEED or SCENES");
        }
        Files.createDirectories(folder.resolve("images"));
        TrainingPictures pictures = new TrainingPictures(folder);
        List<String> names = ScenarioLibrary.list();
        for (long seed = firstSeed; seed < firstSeed + scenes; seed++) {
            String name = names.get((int) (seed % names.size()));
            Scene scene;
            try {
                scene = ScenarioLibrary.load(name, seed);
            } catch (MendableException e) {
                System.err.println(name + ", seed " + seed + ", left out: " + e.getMessage());
                continue;
            }
            for (int look = 0; look < looks; look++) {
                pictures.add(scene, name, seed, look);
            }
        }
        pictures.finish();
    }

    private void add(Scene scene, String name, long sceneSeed, int look) throws IOException {
        long seed = sceneSeed + FIRST_HELD_OUT_SEED * look;
        SplittableRandom random = new SplittableRandom(seed);
        Gym gym = random.nextDouble() < 0.5
                ? Gym.clean(scene.rules(), seed)
                : Gym.school(scene.rules(), random.nextDouble(0.5), seed);
        RenderSettings settings = new RenderSettings(
                4,
                1 / random.nextDouble(50, 250),
                random.nextDouble(0.6, 1.15),
                random.nextDouble(0.005, 0.05),
                0.02,
                Math.max(1, Runtime.getRuntime().availableProcessors()),
                seed);
        double step = 1 / (random.nextDouble() < 0.7 ? 30.0 : 20.0);
        double time = random.nextDouble(step, scene.durationSeconds() - 2 * step);
        Mat strip = new Mat(3 * HEIGHT, WIDTH, CvType.CV_8UC3);
        String file = "%s-%04d.jpg".formatted(name.replace('/', '-'), seed);
        try (FrameRenderer renderer = new FrameRenderer(scene, gym, camera(scene.rules(), random), settings)) {
            for (int k = 0; k < 3; k++) {
                strip.put(k * HEIGHT, 0, renderer.render(k, time + (k - 1) * step));
                if (k == 1) {
                    describe(file, renderer.truth(k, time), images.size() + 1, name + "-" + seed);
                }
            }
        }
        MatOfInt quality = new MatOfInt(Imgcodecs.IMWRITE_JPEG_QUALITY, JPEG_QUALITY);
        Imgcodecs.imwrite(folder.resolve(file).toString(), strip, quality);
        Mat middle = strip.submat(HEIGHT, 2 * HEIGHT, 0, WIDTH);
        Imgcodecs.imwrite(folder.resolve("images").resolve(file).toString(), middle, quality);
        middle.release();
        strip.release();
        quality.release();
    }

    /** Somewhere beside the court, looking at the half in which the scene plays. */
    private static CameraPath camera(RuleSet rules, SplittableRandom random) {
        double around = random.nextDouble(2 * Math.PI);
        double x = 7 + Math.cos(around) * random.nextDouble(9, 15);
        double y = Math.sin(around) * random.nextDouble(8, 12);
        double limitX = rules.lengthMetres() / 2 + 2.5;
        double limitY = rules.widthMetres() / 2 + 4.5;
        double[] position = {
            Math.max(-limitX, Math.min(limitX, x)),
            Math.max(-limitY, Math.min(limitY, y)),
            Math.exp(random.nextDouble(Math.log(1.4), Math.log(7.5)))
        };
        double[] target = {random.nextDouble(5, 11), random.nextDouble(-3, 3), random.nextDouble(0.3, 1.4)};
        Lens lens = Lens.ofFieldOfView(WIDTH, HEIGHT, random.nextDouble(35, 85), random.nextDouble(-0.12, 0.02));
        return CameraPath.fixed(Camera.lookingAt(lens, position, target, random.nextDouble(-0.04, 0.04)));
    }

    private void describe(String file, FrameTruth truth, int imageId, String clip) {
        images.addObject()
                .put("id", imageId)
                .put("file_name", file)
                .put("width", WIDTH)
                .put("height", HEIGHT);
        for (PersonTruth person : truth.people()) {
            person.box().ifPresent(box -> {
                boolean ignore = person.visibleFraction() < LEAST_VISIBLE;
                addBox(imageId, box, ignore, person);
            });
        }
        ObjectNode triple = triples.addObject().put("file", file).put("clip", clip);
        ArrayNode balls = triple.putArray("balls");
        truth.ball().filter(b -> b.visibleFraction() >= LEAST_BALL_VISIBLE).ifPresent(ball -> addBall(balls, ball));
    }

    private void addBox(int imageId, ImageBox box, boolean ignore, PersonTruth person) {
        double left = Math.max(0, box.left());
        double top = Math.max(0, box.top());
        double right = Math.min(WIDTH, box.right());
        double bottom = Math.min(HEIGHT, box.bottom());
        if (right - left < 2 || bottom - top < 2) {
            return;
        }
        ObjectNode node = boxes.addObject().put("image_id", imageId).put("ignore", ignore);
        node.putArray("bbox").add(left).add(top).add(right - left).add(bottom - top);
        ArrayNode keypoints = node.putArray("keypoints");
        for (JointTruth joint : person.joints()) {
            addKeypoint(keypoints, joint);
        }
    }

    /** COCO's x, y, v: 2 seen, 1 hidden, 0 with no place in the picture. */
    private static void addKeypoint(ArrayNode keypoints, JointTruth joint) {
        Optional<PixelPoint> inside =
                joint.pixel().filter(p -> p.x() >= 0 && p.x() < WIDTH && p.y() >= 0 && p.y() < HEIGHT);
        keypoints.add(inside.map(PixelPoint::x).orElse(0.0));
        keypoints.add(inside.map(PixelPoint::y).orElse(0.0));
        keypoints.add(inside.isEmpty() ? 0 : joint.visibility() == Visibility.SEEN ? 2 : 1);
    }

    private static void addBall(ArrayNode balls, BallTruth ball) {
        ball.pixel()
                .filter(p -> p.x() > 0 && p.x() < WIDTH && p.y() > 0 && p.y() < HEIGHT)
                .ifPresent(p -> balls.addArray()
                        .add(p.x())
                        .add(p.y())
                        .add(ball.radiusPixels())
                        .add(ball.visibleFraction()));
    }

    private void finish() throws IOException {
        ObjectMapper mapper = new ObjectMapper();
        mapper.writeValue(folder.resolve("annotations.json").toFile(), annotations);
        mapper.writeValue(folder.resolve("triples.json").toFile(), triples);
    }
}
