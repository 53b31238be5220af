package floorgauge.eval.film;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtCalibrator;
import floorgauge.court.calibration.OpenCv;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.eval.court.CourtScores;
import floorgauge.vision.film.CourtFrames;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.opencv.calib3d.Calib3d;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfDouble;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.MatOfPoint3f;
import org.opencv.core.Point;
import org.opencv.core.Point3;

/** The court of every clip that comes with the program is found without a click, no rule book given, and lies where it is. */
class SampleCourtsTest {

    private static final double MOST_ERROR_METRES = 0.05;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "pin-down-sound",
                "pin-down-screen-misses",
                "elevator-pass-held",
                "high-ball-screen-screener-moving"
            })
    void isFoundWhereItIs(String clip) throws IOException {
        Path folder = Path.of("../sample-clips");
        JsonNode truth = truth(folder.resolve(clip + ".truth.json.gz"));
        CourtCalibration found = CourtFrames.with(
                folder.resolve(clip + ".mp4"), frames -> CourtCalibrator.fromLines(Optional.empty(), frames));
        assertThat(found.status()).as(found.reason()).isNotEqualTo(CalibrationStatus.NONE);
        RuleSet rules = RuleSet.named(truth.path("rules").asText()).orElseThrow();
        JsonNode camera = truth.path("frames").path(0).path("camera");
        double straight = medianError(camera, rules, found, false);
        double turned = medianError(camera, rules, found, true);
        System.out.printf("%s: %s, %.3f m%n", clip, found.status(), Math.min(straight, turned));
        assertThat(Math.min(straight, turned)).as(clip).isLessThan(MOST_ERROR_METRES);
    }

    /** A court has no first and second half, so it may be found turned. */
    private static double medianError(JsonNode camera, RuleSet rules, CourtCalibration found, boolean turned) {
        return CourtScores.of(
                        point -> Optional.of(pixel(camera, turned ? point.turnedHalf() : point)), rules, found, 0.5)
                .supported()
                .medianMetres();
    }

    private static PixelPoint pixel(JsonNode camera, FloorPoint point) {
        OpenCv.load();
        Mat turn = new Mat();
        Calib3d.Rodrigues(matrix(camera.path("R"), 3), turn);
        MatOfPoint2f seen = new MatOfPoint2f();
        Calib3d.projectPoints(
                new MatOfPoint3f(new Point3(point.xMetres(), point.yMetres(), 0)),
                turn,
                matrix(camera.path("t"), 1),
                matrix(camera.path("K"), 3),
                new MatOfDouble(matrix(camera.path("distortion"), 1)),
                seen);
        Point pixel = seen.toArray()[0];
        return new PixelPoint(pixel.x, pixel.y);
    }

    private static Mat matrix(JsonNode numbers, int columns) {
        Mat matrix = new Mat(numbers.size() / columns, columns, CvType.CV_64F);
        for (int i = 0; i < numbers.size(); i++) {
            matrix.put(i / columns, i % columns, numbers.get(i).asDouble());
        }
        return matrix;
    }

    private static JsonNode truth(Path file) throws IOException {
        try (InputStream in = new GZIPInputStream(Files.newInputStream(file))) {
            return new ObjectMapper().readTree(in);
        }
    }
}
