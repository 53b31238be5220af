package floorgauge.vision.network;

import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.calibration.OpenCv;
import java.io.IOException;
import java.nio.file.Path;
import org.opencv.core.Mat;
import org.opencv.imgcodecs.Imgcodecs;

/** Drawn pictures and the source networks' own answers to them, computed by TensorFlow.js (models/convert/build.py). */
final class GoldenTensors {

    private GoldenTensors() {}

    static ModelFolder models() {
        return ModelFolder.standard();
    }

    static Mat picture(String network) {
        OpenCv.load();
        Mat picture = Imgcodecs.imread(file(network + ".png").toString(), Imgcodecs.IMREAD_COLOR);
        if (picture.empty()) {
            throw new IllegalStateException("no picture " + file(network + ".png"));
        }
        return picture;
    }

    static double[][] rows(String network) throws IOException {
        return new ObjectMapper().readValue(file(network + ".json").toFile(), double[][].class);
    }

    private static Path file(String name) {
        return models().path().resolve("golden").resolve(name);
    }
}
