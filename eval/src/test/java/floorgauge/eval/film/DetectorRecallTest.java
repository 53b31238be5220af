package floorgauge.eval.film;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.track.ImageBox;
import floorgauge.eval.tracking.Sighting;
import floorgauge.sampleclips.render.RenderPlan;
import floorgauge.sampleclips.render.camera.CameraStyle;
import floorgauge.sampleclips.render.picture.FrameRenderer;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.truth.PersonTruth;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import floorgauge.vision.network.DetectorSettings;
import floorgauge.vision.network.ModelFolder;
import floorgauge.vision.network.PersonDetector;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Whether rendered players look like people to the person detector: its recall by their height in pixels, on rendered pictures
 * of 1280 x 720 and of 640 x 360, beside its recall on the labelled players of {@link GymFilm} that no drawing hides. The networks'
 * own weights were trained on rendered pictures too; for weights that were not, give their folder. More looks at each scene
 * narrow the figures.
 *
 * <pre>mvn -B test -pl eval -am -Dtest=DetectorRecallTest -Dsurefire.failIfNoSpecifiedTests=false \
 *     -Dfloorgauge.gym=FOLDER [-Dfloorgauge.otherModels=FOLDER] [-Dfloorgauge.looks=N]</pre>
 */
class DetectorRecallTest {

    private static final int LOOKS = Integer.getInteger("floorgauge.looks", 4);
    private static final int GYM_FRAME_STEP = 4;
    private static final int MOST_PLAYER_ID = 10;
    private static final double FIRST_SECONDS = 0.5;
    private static final double LAST_SECONDS = 7;
    private static final double LOOKED_AT_FROM = 40;
    private static final double LOOKED_AT_TO = 60;
    private static final int LOOKED_AT = 70;

    private final PlayerRecall whole = new PlayerRecall();
    private final PlayerRecall half = new PlayerRecall();
    private final PlayerSheet drawn = new PlayerSheet(LOOKED_AT_FROM, LOOKED_AT_TO, LOOKED_AT);

    @Test
    void renderedPlayersAreFoundAsRealOnesAre() throws IOException {
        GymFilm gym = GymClips.given();
        String other = System.getProperty("floorgauge.otherModels", "");
        OpenCv.load();
        ModelFolder models = other.isBlank() ? ModelFolder.standard() : new ModelFolder(Path.of(other));
        try (PersonDetector detector = new PersonDetector(models, new DetectorSettings(PlayerRecall.MIN_SCORE, 0.6))) {
            real(detector, gym).print("gym film");
            rendered(detector, "pin-down-sound", CameraStyle.TRIPOD_SIDE, 31);
            rendered(detector, "motion-weak-sound", CameraStyle.TRIPOD_HIGH, 32);
            rendered(detector, "high-ball-screen-sound", CameraStyle.OPERATOR, 33);
            rendered(detector, "floppy-sound", CameraStyle.PHONE, 34);
        }
        whole.print("rendered, 1280 x 720");
        half.print("rendered, 640 x 360");
        drawn.write(Path.of("target", "recall", "rendered.png"));
        assertThat(whole.all()).isGreaterThan(0.6);
    }

    private static PlayerRecall real(PersonDetector detector, GymFilm gym) throws IOException {
        PlayerRecall recall = new PlayerRecall();
        PlayerSheet sheet = new PlayerSheet(LOOKED_AT_FROM, LOOKED_AT_TO, LOOKED_AT);
        Map<Long, List<ImageBox>> labels = new HashMap<>();
        gym.visibleLabels()
                .frames()
                .forEach(f -> labels.put(
                        f.frame(), f.sightings().stream().map(Sighting::place).toList()));
        try (FilmReader film = FilmReader.open(gym.film());
                FilmFrame frame = new FilmFrame()) {
            while (film.read(frame)) {
                if (frame.index() % GYM_FRAME_STEP == 0) {
                    sheet.add(frame.bgr(), recall.add(labels.get(frame.index()), detector.detect(frame.bgr())));
                }
            }
        }
        sheet.write(Path.of("target", "recall", "real.png"));
        return recall;
    }

    private void rendered(PersonDetector detector, String name, CameraStyle style, long seed) {
        PlayedScene scene = ScenarioLibrary.load(name, seed);
        RenderPlan plan = RenderPlan.of(scene, scene.end(), style, seed);
        try (FrameRenderer renderer = new FrameRenderer(plan.scene(), plan.gym(), plan.path(), plan.settings())) {
            Mat picture = new Mat(renderer.height(), renderer.width(), CvType.CV_8UC3);
            Mat small = new Mat();
            for (int i = 0; i < LOOKS; i++) {
                double time = FIRST_SECONDS + (LAST_SECONDS - FIRST_SECONDS) * i / Math.max(1, LOOKS - 1);
                picture.put(0, 0, renderer.render(i, time));
                List<ImageBox> players = renderer.truth(i, time).people().stream()
                        .filter(p -> p.state().person().id() <= MOST_PLAYER_ID)
                        .map(PersonTruth::box)
                        .flatMap(Optional::stream)
                        .toList();
                whole.add(players, detector.detect(picture));
                Size size = new Size(renderer.width() / 2.0, renderer.height() / 2.0);
                Imgproc.resize(picture, small, size, 0, 0, Imgproc.INTER_AREA);
                drawn.add(
                        small,
                        half.add(
                                players.stream()
                                        .map(b -> new ImageBox(
                                                b.left() / 2 - 0.25, b.top() / 2 - 0.25, b.width() / 2, b.height() / 2))
                                        .toList(),
                                detector.detect(small)));
            }
            small.release();
            picture.release();
        }
    }
}
