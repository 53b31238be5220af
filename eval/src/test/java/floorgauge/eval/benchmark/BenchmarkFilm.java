package floorgauge.eval.benchmark;

import floorgauge.court.calibration.OpenCv;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/** Film of a textured floor with moving patches and a sensor's noise, coded at the rate of a usual camera. */
final class BenchmarkFilm {

    static final int WIDTH = 1280;
    static final int HEIGHT = 720;

    /** Five seconds: an empty hall needs four. */
    static final int FRAMES = 125;

    private static final double FRAMES_PER_SECOND = 25;
    private static final long BITS_PER_SECOND = 6_000_000;
    private static final int SEED = 11;
    private static final int PLAYERS = 10;

    private BenchmarkFilm() {}

    /** Writes the film into a temporary file. */
    static Path write() throws IOException {
        OpenCv.load();
        Path film = Files.createTempFile("benchmark", ".mp4");
        Core.setRNGSeed(SEED);
        Mat floor = floor();
        Mat picture = new Mat();
        Mat noise = new Mat(HEIGHT, WIDTH, CvType.CV_8UC3);
        FilmSettings settings =
                FilmSettings.of(WIDTH, HEIGHT, FRAMES_PER_SECOND).withBitsPerSecond(BITS_PER_SECOND);
        try (FilmWriter writer = FilmWriter.create(film, settings)) {
            for (int i = 0; i < FRAMES; i++) {
                draw(floor, picture, i);
                Core.randn(noise, 3, 3);
                Core.add(picture, noise, picture);
                writer.write(picture, i / FRAMES_PER_SECOND);
            }
        }
        return film;
    }

    /** One of the film's pictures, without noise. */
    static Mat picture() {
        OpenCv.load();
        Core.setRNGSeed(SEED);
        Mat picture = new Mat();
        draw(floor(), picture, 0);
        return picture;
    }

    private static Mat floor() {
        Mat coarse = new Mat(HEIGHT / 16, WIDTH / 16, CvType.CV_8UC3);
        Core.randu(coarse, 80, 160);
        Mat floor = new Mat();
        Imgproc.resize(coarse, floor, new Size(WIDTH, HEIGHT), 0, 0, Imgproc.INTER_CUBIC);
        return floor;
    }

    private static void draw(Mat floor, Mat picture, int index) {
        floor.copyTo(picture);
        for (int player = 0; player < PLAYERS; player++) {
            int x = (100 * player + 7 * index) % (WIDTH - 40);
            int y = 200 + 37 * player;
            picture.submat(new Rect(x, y, 40, 120)).setTo(new Scalar(20 * player, 60, 255 - 20 * player));
        }
    }
}
