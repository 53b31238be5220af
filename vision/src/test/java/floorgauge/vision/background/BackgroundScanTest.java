package floorgauge.vision.background;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.track.ImageBox;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Point;
import org.opencv.core.Scalar;
import org.opencv.imgproc.Imgproc;

class BackgroundScanTest {

    @TempDir
    private Path folder;

    /** A white block that walks to the right over a grey hall, or with a camera that swings, the hall itself. */
    private Path film(int frames, boolean swinging) {
        OpenCv.load();
        Path file = folder.resolve("film.mp4");
        FilmSettings settings = FilmSettings.of(320, 192, 10);
        try (FilmWriter writer = FilmWriter.create(file, settings)) {
            for (int i = 0; i < frames; i++) {
                Mat picture = hall(swinging ? 12 * i : 0);
                Imgproc.rectangle(picture, blockCorner(i), new Point(10 + 5 * i + 19, 139), Scalar.all(240), -1);
                writer.write(picture, i / 10.0);
                picture.release();
            }
        }
        return file;
    }

    private static Point blockCorner(int frame) {
        return new Point(10 + 5 * frame, 80);
    }

    private static Mat hall(int shift) {
        Mat picture = new Mat(192, 320, CvType.CV_8UC3, Scalar.all(90));
        for (int x = -shift % 64; x < 320; x += 64) {
            Imgproc.rectangle(picture, new Point(x, 0), new Point(x + 31, 191), new Scalar(40, 120, 160), -1);
        }
        return picture;
    }

    @Test
    void whatWalksDiffersAndTheHallDoesNot() {
        try (BackgroundModel model = BackgroundScan.scan(film(50, false));
                MovingRegions moving = new MovingRegions(model)) {
            assertThat(model.isKnown()).isTrue();
            Mat frame = hall(0);
            Imgproc.rectangle(frame, blockCorner(25), new Point(154, 139), Scalar.all(240), -1);
            moving.look(frame, 2.5);
            frame.release();
            assertThat(moving.share(new ImageBox(135, 80, 20, 60)).orElseThrow())
                    .isGreaterThan(0.9);
            assertThat(moving.share(new ImageBox(235, 80, 20, 60)).orElseThrow())
                    .isLessThan(0.02);
            assertThat(moving.share(new ImageBox(-50, 80, 20, 60))).isEmpty();
            assertThat(moving.boxes())
                    .singleElement()
                    .satisfies(b -> assertThat(b.intersectionOverUnion(new ImageBox(135, 80, 20, 60)))
                            .isGreaterThan(0.8));
        }
    }

    @Test
    void aSwingingCameraHasNoBackground() {
        try (BackgroundModel model = BackgroundScan.scan(film(50, true));
                MovingRegions moving = new MovingRegions(model)) {
            assertThat(model.isKnown()).isFalse();
            Mat frame = hall(0);
            moving.look(frame, 1);
            frame.release();
            assertThat(moving.share(new ImageBox(135, 80, 20, 60))).isEmpty();
            assertThat(moving.boxes()).isEmpty();
        }
    }

    /** Whoever waits for a pass stands still for seconds, and would be taken for part of the hall. */
    @Test
    void aFilmOfThreeSecondsHasNone() {
        try (BackgroundModel model = BackgroundScan.scan(film(30, false))) {
            assertThat(model.isKnown()).isFalse();
        }
    }

    @Test
    void aFilmOfAFewFramesHasNone() {
        try (BackgroundModel model = BackgroundScan.scan(film(3, false))) {
            assertThat(model.isKnown()).isFalse();
        }
    }
}
