package floorgauge.app.review;

import floorgauge.court.calibration.OpenCv;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.nio.file.Path;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Point;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.imgproc.Imgproc;

/** A film whose every picture carries its own number, as a row of white and black squares: the lowest bit at the left. */
final class NumberedFilm {

    /** Squares in a row. */
    static final int BITS = 10;

    /** Side of a square, pixels. */
    static final int SIDE = 64;

    private static final Scalar GREY = new Scalar(96, 96, 96);

    private NumberedFilm() {}

    static void write(Path file, int width, int height, double framesPerSecond, int frames) {
        OpenCv.load();
        Mat picture = new Mat(height, width, CvType.CV_8UC3);
        try (FilmWriter writer = FilmWriter.create(file, FilmSettings.of(width, height, framesPerSecond))) {
            for (int frame = 0; frame < frames; frame++) {
                picture.setTo(GREY);
                Imgproc.circle(
                        picture,
                        new Point(width * (0.2 + 0.6 * frame / frames), height * 0.6),
                        60,
                        new Scalar(0, 0, 0),
                        -1);
                for (int bit = 0; bit < BITS; bit++) {
                    double value = (frame >> bit & 1) * 255.0;
                    Imgproc.rectangle(
                            picture, new Rect(bit * SIDE, 0, SIDE, SIDE), new Scalar(value, value, value), -1);
                }
                writer.write(picture, frame / framesPerSecond);
            }
        } finally {
            picture.release();
        }
    }
}
