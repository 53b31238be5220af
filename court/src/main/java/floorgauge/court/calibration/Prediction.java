package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where the court should be, from the picture before and the camera's motion, as residuals: a few floor points spread over
 * the picture, each with the same standard deviation in the picture.
 */
final class Prediction implements ProjectionRefiner.Observations {

    private static final int COLUMNS = 4;
    private static final int ROWS = 3;

    /** A lens's strength changes little from one picture to the next, also where the camera zooms (own figure). */
    static final double LENS_ERROR = 0.005;

    private final FloorProjection projection;
    private final double sigmaPixels;
    private final List<double[]> floor = new ArrayList<>();
    private final List<PixelPoint> film = new ArrayList<>();

    /**
     * @param projection predicted
     * @param sigmaPixels standard deviation of a predicted point, above 0
     */
    Prediction(FloorProjection projection, double sigmaPixels, int width, int height) {
        this.projection = projection;
        this.sigmaPixels = sigmaPixels;
        for (int row = 0; row < ROWS; row++) {
            for (int column = 0; column < COLUMNS; column++) {
                // The lower two thirds of the picture: there the floor is.
                PixelPoint p =
                        new PixelPoint(width * (column + 0.5) / COLUMNS, height * (1 + 2 * (row + 0.5) / ROWS) / 3);
                projection.toFloor(p).ifPresent(at -> {
                    floor.add(new double[] {at.xMetres(), at.yMetres()});
                    film.add(p);
                });
            }
        }
    }

    FloorProjection projection() {
        return projection;
    }

    /** The covariance of the predicted projection itself; empty where the floor is not in sight. */
    Optional<ProjectionCovariance> covariance() {
        ParameterBasis basis = ParameterBasis.at(projection, 0);
        NormalEquations equations = new NormalEquations(basis.size());
        residuals(projection, basis, equations);
        // Neighbouring points err alike: the error of one holds for all of them.
        return equations.inverse().map(inverse -> basis.covariance(inverse).scaled(film.size() / 2.0));
    }

    @Override
    public void residuals(FloorProjection tried, ParameterBasis basis, NormalEquations into) {
        double[][] byFloor = new double[2][2];
        double[][] by = new double[2][FloorProjection.PARAMETERS];
        double[] derivative = new double[basis.size()];
        for (int i = 0; i < film.size(); i++) {
            double x = floor.get(i)[0];
            double y = floor.get(i)[1];
            Optional<PixelPoint> at = tried.toFilm(x, y);
            if (at.isEmpty() || !tried.derivatives(x, y, byFloor, by)) {
                continue;
            }
            add(film.get(i).x() - at.get().x(), by[0], basis, derivative, into);
            add(film.get(i).y() - at.get().y(), by[1], basis, derivative, into);
        }
    }

    private void add(
            double residual, double[] byParameters, ParameterBasis basis, double[] derivative, NormalEquations into) {
        basis.along(byParameters, derivative);
        for (int i = 0; i < derivative.length; i++) {
            derivative[i] /= sigmaPixels;
        }
        double scaled = residual / sigmaPixels;
        into.add(scaled, derivative, 1, scaled * scaled / 2);
    }
}
