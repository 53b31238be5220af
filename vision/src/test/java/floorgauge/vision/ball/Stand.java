package floorgauge.vision.ball;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.PinholeCamera;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Body;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import floorgauge.vision.network.BallSighting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/** A camera on a stand beside the court, what it would see of a ball, and players who stand still. */
final class Stand {

    static final int WIDTH = 1280;
    static final int HEIGHT = 720;

    private static final double FOCAL = 900;

    /** At (4, -13, 4) metres, level with the sideline's direction, tilted down by 12 degrees. */
    private final double tilt = Math.toRadians(12);

    CourtCalibration calibration() {
        double c = Math.cos(tilt);
        double s = Math.sin(tilt);
        double[][] rotation = {{1, 0, 0}, {0, -s, -c}, {0, c, -s}};
        double[] from = {4, -13, 4};
        RealMatrix floorToPixel = MatrixUtils.createRealMatrix(3, 3);
        for (int row = 0; row < 3; row++) {
            double t = 0;
            for (int k = 0; k < 3; k++) {
                t -= rotation[row][k] * from[k];
            }
            floorToPixel.setRow(row, new double[] {rotation[row][0], rotation[row][1], t});
        }
        RealMatrix k = MatrixUtils.createRealMatrix(new double[][] {
            {FOCAL, 0, (WIDTH - 1) / 2.0}, {0, FOCAL, (HEIGHT - 1) / 2.0}, {0, 0, 1}
        });
        RealMatrix back =
                new LUDecomposition(k.multiply(floorToPixel)).getSolver().getInverse();
        double[] h = new double[9];
        for (int i = 0; i < 9; i++) {
            h[i] = back.getEntry(i / 3, i % 3);
        }
        return CourtCalibration.known(RuleSet.fiba(), h, WIDTH, HEIGHT);
    }

    PinholeCamera camera() {
        return calibration().camera().orElseThrow();
    }

    BallSighting sighting(double x, double y, double z, double dx, double dy, double score) {
        PixelPoint p = camera().toFilm(x, y, z).orElseThrow();
        return new BallSighting(
                new PixelPoint(p.x() + dx, p.y() + dy), BallSize.radiusPixels(camera(), x, y, z), score);
    }

    static PlayerTrack standing(int id, double x, double y, double seconds) {
        return standing(id, Team.FIRST, x, y, seconds);
    }

    static PlayerTrack standing(int id, Team team, double x, double y, double seconds) {
        List<PlayerObservation> list = new ArrayList<>();
        for (int i = 0; i * 0.1 <= seconds; i++) {
            list.add(new PlayerObservation(
                    3L * i,
                    i * 0.1,
                    new FloorEstimate(new FloorPoint(x, y), FloorCovariance.isotropic(0.08)),
                    FootSource.ANKLES,
                    Optional.empty(),
                    Optional.empty(),
                    Body.UNSEEN,
                    0.9));
        }
        return new PlayerTrack(id, team, 1, list, List.of());
    }
}
