package floorgauge.app;

import floorgauge.court.calibration.OpenCv;
import java.nio.file.Path;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.videoio.VideoWriter;

/** A film that browsers do not play: two seconds of grey that grows lighter. */
public final class MotionJpegFilm {

    /** How many pictures it has. */
    public static final int PICTURES = 20;

    private static final double PICTURES_A_SECOND = 10;
    private static final int WIDTH = 160;
    private static final int HEIGHT = 96;

    private MotionJpegFilm() {}

    /** Writes it. @param film ends in .avi; its folder is there @return the film */
    public static Path write(Path film) {
        OpenCv.load();
        VideoWriter writer = new VideoWriter(
                film.toString(),
                VideoWriter.fourcc('M', 'J', 'P', 'G'),
                PICTURES_A_SECOND,
                new Size(WIDTH, HEIGHT),
                true);
        for (int i = 0; i < PICTURES; i++) {
            Mat grey = new Mat(HEIGHT, WIDTH, CvType.CV_8UC3, Scalar.all(40 + 8 * i));
            writer.write(grey);
            grey.release();
        }
        writer.release();
        return film;
    }
}
