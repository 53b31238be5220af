package floorgauge.vision.film;

import floorgauge.court.calibration.OpenCv;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;

/** Small films whose every picture says which one it is: grey, a red patch at the top left, and a bright bar that moves. */
final class TestFilm {

    static final Scalar GREY = new Scalar(90, 90, 90);
    static final Scalar RED = new Scalar(20, 20, 220);

    private TestFilm() {}

    /** The picture of the given number. */
    static Mat picture(int width, int height, int number) {
        OpenCv.load();
        Mat picture = new Mat(height, width, CvType.CV_8UC3, GREY);
        picture.submat(new Rect(0, 0, width / 4, height / 4)).setTo(RED);
        picture.submat(new Rect(barLeft(width, number), height / 2, width / 8, height / 2))
                .setTo(new Scalar(230, 230, 230));
        return picture;
    }

    /** Where the bar of a picture starts. */
    static int barLeft(int width, int number) {
        return number * 5 % (width - width / 8);
    }

    /** Writes one picture for each time. */
    static void write(Path film, FilmSettings settings, double... times) {
        try (FilmWriter writer = FilmWriter.create(film, settings)) {
            for (int i = 0; i < times.length; i++) {
                Mat picture = picture(settings.width(), settings.height(), i);
                writer.write(picture, times[i]);
                picture.release();
            }
        }
    }

    /** Evenly spaced times. */
    static double[] steady(int count, double framesPerSecond) {
        double[] times = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = i / framesPerSecond;
        }
        return times;
    }

    /** The times of all pictures. */
    static List<Double> times(Path film) {
        List<Double> times = new ArrayList<>();
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            while (reader.read(frame)) {
                times.add(frame.timeSeconds());
            }
        }
        return times;
    }
}
