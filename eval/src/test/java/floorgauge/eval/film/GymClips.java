package floorgauge.eval.film;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.rules.RuleSet;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;

/**
 * The TrackID3x3 gym clips (Yamada and others, 2025, arXiv 2503.18282): three against three on a gym floor, one fixed
 * camera, labelled boxes at 1280 x 720 and 20 frames a second. In a folder outside the project, named by the property
 * floorgauge.gym.
 */
final class GymClips {

    static final double FRAMES_PER_SECOND = 20;
    static final int LABEL_WIDTH = 1280;
    static final int LABEL_HEIGHT = 720;

    private GymClips() {}

    /** The folder; the calling test is skipped where it is not given. */
    static Path folder() {
        String folder = System.getProperty("floorgauge.gym", "");
        assumeTrue(!folder.isBlank(), "skipped: give the gym clips' folder with -Dfloorgauge.gym=FOLDER");
        return Path.of(folder);
    }

    /**
     * The data set's own homography, for pictures of a width. It maps to centimetres from a corner of the painted half
     * court, along the length from the end line and along the width. Seen from the camera the end line lies beyond and the
     * width runs to the right, so in the court frame both count down from the corner (14, 7.5).
     */
    static CourtCalibration calibration(int width) {
        try {
            JsonNode rows = new ObjectMapper()
                    .readTree(folder().resolve("court-points.json").toFile())
                    .get("homography_px_to_court_cm");
            RuleSet rules = RuleSet.fiba();
            double[][] h = new double[3][3];
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < 3; j++) {
                    h[i][j] = rows.get(i).get(j).doubleValue();
                }
            }
            double scale = (double) LABEL_WIDTH / width;
            double shift = (scale - 1) / 2;
            double[] result = new double[9];
            for (int i = 0; i < 3; i++) {
                double corner = i == 0 ? rules.lengthMetres() / 2 : rules.widthMetres() / 2;
                double[] row = new double[3];
                for (int j = 0; j < 3; j++) {
                    row[j] = i == 2 ? h[2][j] : corner * h[2][j] - 0.01 * h[i][j];
                }
                result[3 * i] = row[0] * scale;
                result[3 * i + 1] = row[1] * scale;
                result[3 * i + 2] = row[0] * shift + row[1] * shift + row[2];
            }
            return CourtCalibration.known(rules, result, width, width * LABEL_HEIGHT / LABEL_WIDTH);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
