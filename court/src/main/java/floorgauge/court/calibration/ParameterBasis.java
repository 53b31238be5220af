package floorgauge.court.calibration;

/**
 * Independent, well-scaled directions in which a projection may move: eight for the homography, at right angles to its own
 * scale once floor and picture are brought to unit size, and one for each strength of the lens that is estimated.
 */
final class ParameterBasis {

    /** Metres to units of about one on a court. */
    private static final double FLOOR_SCALE = 0.1;

    /** The first direction in which only the lens moves. */
    static final int FIRST_LENS = 8;

    private final double[][] directions;

    private ParameterBasis(double[][] directions) {
        this.directions = directions;
    }

    /**
     * @param projection about which to move
     * @param lensTerms how many of the lens's strengths may move too, 0 to 2
     */
    static ParameterBasis at(FloorProjection projection, int lensTerms) {
        Lens lens = projection.lens();
        Homography picture = Homography.similarity(1 / lens.radiusPixels(), lens.centreX(), lens.centreY());
        Homography floor = Homography.similarity(FLOOR_SCALE, 0, 0);
        Homography unit = picture.after(projection.floorToIdeal()).after(floor.inverse());
        double norm = unit.norm();
        double[] g = unit.scaled(1 / norm).rowMajor();
        double[][] directions = new double[8 + lensTerms][FloorProjection.PARAMETERS];
        double[] v = g.clone();
        int pivot = largest(g);
        v[pivot] += Math.signum(g[pivot]);
        double squared = 0;
        for (double entry : v) {
            squared += entry * entry;
        }
        int row = 0;
        for (int axis = 0; axis < 9; axis++) {
            if (axis != pivot) {
                double[] reflected = new double[9];
                for (int i = 0; i < 9; i++) {
                    reflected[i] = (i == axis ? 1 : 0) - 2 * v[axis] * v[i] / squared;
                }
                System.arraycopy(inPicture(reflected, picture, floor, norm), 0, directions[row++], 0, 9);
            }
        }
        for (int term = 0; term < lensTerms; term++) {
            directions[FIRST_LENS + term][9 + term] = 1;
        }
        return new ParameterBasis(directions);
    }

    private static int largest(double[] g) {
        int best = 0;
        for (int i = 1; i < g.length; i++) {
            if (Math.abs(g[i]) > Math.abs(g[best])) {
                best = i;
            }
        }
        return best;
    }

    /** {@code P^-1 D F norm} for a direction D, which need not be invertible itself. */
    private static double[] inPicture(double[] d, Homography picture, Homography floor, double norm) {
        double scale = picture.at(0, 0);
        double x = -picture.at(0, 2) / scale;
        double y = -picture.at(1, 2) / scale;
        double[] moved = new double[9];
        double[] columnScale = {floor.at(0, 0), floor.at(1, 1), 1};
        for (int column = 0; column < 3; column++) {
            double factor = norm * columnScale[column];
            moved[column] = factor * (d[column] / scale + x * d[6 + column]);
            moved[3 + column] = factor * (d[3 + column] / scale + y * d[6 + column]);
            moved[6 + column] = factor * d[6 + column];
        }
        return moved;
    }

    int size() {
        return directions.length;
    }

    /** Derivative along each direction, from the derivative by the parameters. */
    void along(double[] byParameters, double[] byDirection) {
        for (int k = 0; k < directions.length; k++) {
            double sum = 0;
            for (int i = 0; i < FloorProjection.PARAMETERS; i++) {
                sum += byParameters[i] * directions[k][i];
            }
            byDirection[k] = sum;
        }
    }

    /** The projection moved by a step; a lens beyond its range is held at the range's end. */
    FloorProjection moved(FloorProjection projection, double[] step) {
        double[] entries = projection.floorToIdeal().rowMajor();
        double k = projection.lens().k();
        double l = projection.lens().l();
        for (int direction = 0; direction < directions.length; direction++) {
            for (int i = 0; i < 9; i++) {
                entries[i] += step[direction] * directions[direction][i];
            }
            k += step[direction] * directions[direction][9];
            l += step[direction] * directions[direction][10];
        }
        return new FloorProjection(Homography.of(entries), projection.lens().withStrengths(held(k, 0.9), held(l, 0.5)));
    }

    private static double held(double strength, double most) {
        return Math.max(-most, Math.min(most, strength));
    }

    /** Covariance of the parameters from that of the directions. */
    ProjectionCovariance covariance(double[][] ofDirections) {
        int n = FloorProjection.PARAMETERS;
        double[] full = new double[n * n];
        for (int a = 0; a < directions.length; a++) {
            for (int b = 0; b < directions.length; b++) {
                for (int i = 0; i < n; i++) {
                    for (int j = 0; j < n; j++) {
                        full[n * i + j] += directions[a][i] * ofDirections[a][b] * directions[b][j];
                    }
                }
            }
        }
        return ProjectionCovariance.of(full);
    }
}
