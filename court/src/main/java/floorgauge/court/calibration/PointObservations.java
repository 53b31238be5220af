package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import java.util.List;
import java.util.Optional;

/** Marked points as residuals: across and down the picture, each over the same standard deviation. */
final class PointObservations implements ProjectionRefiner.Observations {

    /** What a point behind the camera costs, in squared standard deviations: more than any point in sight. */
    private static final double OUT_OF_SIGHT = 1e12;

    private final List<MarkedPoint> points;
    private final double sigmaPixels;

    PointObservations(List<MarkedPoint> points, double sigmaPixels) {
        this.points = points;
        this.sigmaPixels = sigmaPixels;
    }

    @Override
    public void residuals(FloorProjection projection, ParameterBasis basis, NormalEquations into) {
        double[][] byFloor = new double[2][2];
        double[][] byParameters = new double[2][FloorProjection.PARAMETERS];
        double[] derivative = new double[basis.size()];
        for (MarkedPoint point : points) {
            double x = point.floor().xMetres();
            double y = point.floor().yMetres();
            Optional<PixelPoint> predicted = projection.toFilm(x, y);
            if (predicted.isEmpty() || !projection.derivatives(x, y, byFloor, byParameters)) {
                into.add(0, new double[basis.size()], 0, OUT_OF_SIGHT);
                continue;
            }
            add(point.pixel().x() - predicted.get().x(), byParameters[0], basis, derivative, into);
            add(point.pixel().y() - predicted.get().y(), byParameters[1], basis, derivative, into);
        }
    }

    private void add(
            double residual, double[] byParameters, ParameterBasis basis, double[] derivative, NormalEquations into) {
        basis.along(byParameters, derivative);
        for (int i = 0; i < derivative.length; i++) {
            derivative[i] /= sigmaPixels;
        }
        double scaled = residual / sigmaPixels;
        into.add(scaled, derivative, 1, scaled * scaled);
    }
}
