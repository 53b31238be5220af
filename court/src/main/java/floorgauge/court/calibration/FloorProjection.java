package floorgauge.court.calibration;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * From the floor to the film: a homography to the ideal picture, then the lens. The eleven parameters are the homography's
 * nine entries, row by row and up to scale, and the lens's two strengths.
 *
 * @param floorToIdeal court frame in metres to pixels of the ideal picture, with {@link Homography#weight} above 0 for
 *     what stands before the camera
 * @param lens from the ideal picture to the film
 */
public record FloorProjection(Homography floorToIdeal, Lens lens) {

    /** Nine entries of the homography and the lens's two strengths. */
    public static final int PARAMETERS = 11;

    public FloorProjection {
        Objects.requireNonNull(floorToIdeal, "floorToIdeal");
        Objects.requireNonNull(lens, "lens");
    }

    /** Where a floor point appears in the film; empty where it is behind the camera or beyond the lens's reach. */
    public Optional<PixelPoint> toFilm(double xMetres, double yMetres) {
        if (!(floorToIdeal.weight(xMetres, yMetres) > 0)) {
            return Optional.empty();
        }
        return lens.bend(floorToIdeal.mapX(xMetres, yMetres), floorToIdeal.mapY(xMetres, yMetres));
    }

    /** Where a film point lies on the floor; empty at and above the horizon. */
    public Optional<FloorPoint> toFloor(PixelPoint film) {
        return lens.straighten(film).flatMap(this::idealToFloor);
    }

    private Optional<FloorPoint> idealToFloor(PixelPoint ideal) {
        Homography back = floorToIdeal.inverse();
        double x = back.mapX(ideal.x(), ideal.y());
        double y = back.mapY(ideal.x(), ideal.y());
        if (!Double.isFinite(x) || !Double.isFinite(y) || !(floorToIdeal.weight(x, y) > 0)) {
            return Optional.empty();
        }
        return Optional.of(new FloorPoint(x, y));
    }

    /**
     * Derivatives of {@link #toFilm} at a floor point that is in sight.
     *
     * @param byFloor 2 x 2, filled with the derivative by the floor point, pixels a metre
     * @param byParameters 2 x 11, filled with the derivative by the parameters
     * @return false, with nothing filled, where the point is not in sight
     */
    public boolean derivatives(double xMetres, double yMetres, double[][] byFloor, double[][] byParameters) {
        double w = floorToIdeal.weight(xMetres, yMetres);
        if (!(w > 0)) {
            return false;
        }
        double u = floorToIdeal.mapX(xMetres, yMetres);
        double v = floorToIdeal.mapY(xMetres, yMetres);
        double[][] bend = new double[2][4];
        if (!bendDerivatives(u, v, bend)) {
            return false;
        }
        double[][] idealByFloor = {
            {
                (floorToIdeal.at(0, 0) - u * floorToIdeal.at(2, 0)) / w,
                (floorToIdeal.at(0, 1) - u * floorToIdeal.at(2, 1)) / w
            },
            {
                (floorToIdeal.at(1, 0) - v * floorToIdeal.at(2, 0)) / w,
                (floorToIdeal.at(1, 1) - v * floorToIdeal.at(2, 1)) / w
            }
        };
        double[] homogeneous = {xMetres / w, yMetres / w, 1 / w};
        for (int row = 0; row < 2; row++) {
            for (int column = 0; column < 2; column++) {
                byFloor[row][column] = bend[row][0] * idealByFloor[0][column] + bend[row][1] * idealByFloor[1][column];
            }
            for (int k = 0; k < 3; k++) {
                byParameters[row][k] = bend[row][0] * homogeneous[k];
                byParameters[row][3 + k] = bend[row][1] * homogeneous[k];
                byParameters[row][6 + k] = -(bend[row][0] * u + bend[row][1] * v) * homogeneous[k];
            }
            byParameters[row][9] = bend[row][2];
            byParameters[row][10] = bend[row][3];
        }
        return true;
    }

    /** Derivatives of the bent point by the ideal point (two columns) and by the lens's two strengths. */
    private boolean bendDerivatives(double u, double v, double[][] bend) {
        double dx = u - lens.centreX();
        double dy = v - lens.centreY();
        double squaredRadius = lens.radiusPixels() * lens.radiusPixels();
        double q = (dx * dx + dy * dy) / squaredRadius;
        OptionalDouble bending = lens.bending(q);
        if (bending.isEmpty()) {
            return false;
        }
        double m = bending.getAsDouble();
        double film = q * m * m;
        double curve = 2 * lens.k() + 4 * lens.l() * film;
        double slope = 1 - q * m * curve;
        double outward = m * m * curve / slope / squaredRadius;
        bend[0][0] = m + outward * dx * dx;
        bend[0][1] = outward * dx * dy;
        bend[1][0] = bend[0][1];
        bend[1][1] = m + outward * dy * dy;
        bend[0][2] = dx * film / slope;
        bend[1][2] = dy * film / slope;
        bend[0][3] = bend[0][2] * film;
        bend[1][3] = bend[1][2] * film;
        return true;
    }

    /** The same projection after the picture was scaled; a pixel's centre stays the centre of what it covers. */
    public FloorProjection forPictureScaledBy(double factor) {
        // Edges scale about the picture's corner (-0.5, -0.5), so centres move by half a pixel less half a pixel's
        // image.
        double shift = (factor - 1) / 2;
        Homography scale = Homography.of(factor, 0, shift, 0, factor, shift, 0, 0, 1);
        return new FloorProjection(
                scale.after(floorToIdeal),
                new Lens(
                        lens.centreX() * factor + shift,
                        lens.centreY() * factor + shift,
                        lens.radiusPixels() * factor,
                        lens.k(),
                        lens.l()));
    }
}
