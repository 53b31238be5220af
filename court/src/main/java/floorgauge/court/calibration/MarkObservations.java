package floorgauge.court.calibration;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import java.util.List;
import java.util.Optional;

/**
 * Marks as residuals, each over the same standard deviation: a point's across and down the picture, a place's across its
 * line in the picture. The lens is near a straight one before anything is marked.
 */
final class MarkObservations implements ProjectionRefiner.Observations {

    /** What a mark behind the camera costs, in squared standard deviations: more than any in sight. */
    private static final double OUT_OF_SIGHT = 1e12;

    private final List<? extends CourtMark> marks;
    private final double sigmaPixels;

    MarkObservations(List<? extends CourtMark> marks, double sigmaPixels) {
        this.marks = marks;
        this.sigmaPixels = sigmaPixels;
    }

    @Override
    public void residuals(FloorProjection projection, ParameterBasis basis, NormalEquations into) {
        double[] derivative = new double[basis.size()];
        if (basis.size() > ParameterBasis.FIRST_LENS) {
            double strength = projection.lens().k() / LineObservations.LENS_PRIOR;
            derivative[ParameterBasis.FIRST_LENS] = 1 / LineObservations.LENS_PRIOR;
            into.add(-strength, derivative, 1, strength * strength);
        }
        double[][] rows = new double[2][FloorProjection.PARAMETERS];
        double[] residual = new double[2];
        for (CourtMark mark : marks) {
            int count = rows(projection, mark, residual, rows);
            if (count == 0) {
                into.add(0, new double[basis.size()], 0, OUT_OF_SIGHT);
            }
            for (int i = 0; i < count; i++) {
                basis.along(rows[i], derivative);
                for (int k = 0; k < derivative.length; k++) {
                    derivative[k] /= sigmaPixels;
                }
                double scaled = residual[i] / sigmaPixels;
                into.add(scaled, derivative, 1, scaled * scaled);
            }
        }
    }

    /**
     * Residuals of a mark and derivatives of its prediction.
     *
     * @param residual filled, pixels
     * @param rows filled, by the parameters
     * @return how many were filled; 0 where the mark is out of sight
     */
    static int rows(FloorProjection projection, CourtMark mark, double[] residual, double[][] rows) {
        Optional<FloorPoint> floor = floor(projection, mark);
        double[][] byFloor = new double[2][2];
        Optional<PixelPoint> at = floor.flatMap(p -> projection.toFilm(p.xMetres(), p.yMetres()));
        if (at.isEmpty()
                || !projection.derivatives(floor.get().xMetres(), floor.get().yMetres(), byFloor, rows)) {
            return 0;
        }
        double dx = mark.pixel().x() - at.get().x();
        double dy = mark.pixel().y() - at.get().y();
        if (mark instanceof MarkedPlace place) {
            double[] normal = normal(place, floor.get(), byFloor);
            residual[0] = dx * normal[0] + dy * normal[1];
            for (int k = 0; k < rows[0].length; k++) {
                rows[0][k] = rows[0][k] * normal[0] + rows[1][k] * normal[1];
            }
            return 1;
        }
        residual[0] = dx;
        residual[1] = dy;
        return 2;
    }

    /** The floor point that a mark speaks of: of a place, the nearest of its line. */
    static Optional<FloorPoint> floor(FloorProjection projection, CourtMark mark) {
        if (mark instanceof MarkedPoint point) {
            return Optional.of(point.floor());
        }
        return projection.toFloor(mark.pixel()).map(((MarkedPlace) mark).line()::nearestTo);
    }

    /** Unit vector across the line in the picture. */
    private static double[] normal(MarkedPlace place, FloorPoint on, double[][] byFloor) {
        double[] along = place.line().directionAt(on);
        double x = byFloor[0][0] * along[0] + byFloor[0][1] * along[1];
        double y = byFloor[1][0] * along[0] + byFloor[1][1] * along[1];
        double length = Math.hypot(x, y);
        return new double[] {-y / length, x / length};
    }
}
