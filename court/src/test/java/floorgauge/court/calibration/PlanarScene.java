package floorgauge.court.calibration;

import floorgauge.court.rules.RuleSet;

/**
 * The one planar scene that all homography tests share: a court seen by a pinhole camera of which everything is known. The
 * projection is computed here point by point from the pinhole equation, apart from the code under test.
 */
final class PlanarScene {

    final RuleSet rules;
    final int width;
    final int height;
    final double focal;
    final double k;
    private final double[] position;
    private final double[][] axes;

    /**
     * @param position of the camera, court frame, metres
     * @param target a floor point in the middle of the picture
     * @param focal length in pixels
     * @param k strength of the lens's distortion by the division model
     */
    PlanarScene(RuleSet rules, int width, int height, double[] position, double[] target, double focal, double k) {
        this.rules = rules;
        this.width = width;
        this.height = height;
        this.focal = focal;
        this.k = k;
        this.position = position.clone();
        double[] ahead = unit(new double[] {target[0] - position[0], target[1] - position[1], -position[2]});
        double[] right = unit(cross(ahead, new double[] {0, 0, 1}));
        this.axes = new double[][] {right, cross(ahead, right), ahead};
    }

    /** A half-court view from beyond the side line, 4 m up. */
    static PlanarScene halfCourt() {
        return new PlanarScene(RuleSet.fiba(), 1280, 720, new double[] {6, -13, 4}, new double[] {8, 0}, 900, 0);
    }

    /** The same view through a barrel lens. */
    static PlanarScene halfCourtThroughBarrelLens() {
        return new PlanarScene(RuleSet.fiba(), 1280, 720, new double[] {6, -13, 4}, new double[] {8, 0}, 900, -0.08);
    }

    /** Film point of a point of the court frame, or null behind the camera. */
    double[] film(double x, double y, double z) {
        double[] d = {x - position[0], y - position[1], z - position[2]};
        double depth = dot(axes[2], d);
        if (depth <= 0) {
            return null;
        }
        double u = focal * dot(axes[0], d) / depth;
        double v = focal * dot(axes[1], d) / depth;
        double radius = Math.hypot(width, height) / 2;
        double ideal = Math.hypot(u, v) / radius;
        // Solves ideal = r / (1 + k r^2) by Newton's method, so as not to repeat the closed form under test.
        double r = ideal;
        for (int i = 0; i < 60 && ideal > 0; i++) {
            double f = r / (1 + k * r * r) - ideal;
            double slope = (1 - k * r * r) / ((1 + k * r * r) * (1 + k * r * r));
            r -= f / slope;
        }
        double factor = ideal > 0 ? r / ideal : 1;
        return new double[] {(width - 1) / 2.0 + u * factor, (height - 1) / 2.0 + v * factor};
    }

    /** Floor to ideal picture, row by row, from {@code K [r1 r2 t]}. */
    double[] floorToIdeal() {
        double[][] g = new double[3][3];
        double[] t = new double[3];
        for (int row = 0; row < 3; row++) {
            t[row] = -dot(axes[row], position);
        }
        for (int column = 0; column < 3; column++) {
            double[] c = column < 2 ? new double[] {axes[0][column], axes[1][column], axes[2][column]} : t;
            g[0][column] = focal * c[0] + (width - 1) / 2.0 * c[2];
            g[1][column] = focal * c[1] + (height - 1) / 2.0 * c[2];
            g[2][column] = c[2];
        }
        return new double[] {g[0][0], g[0][1], g[0][2], g[1][0], g[1][1], g[1][2], g[2][0], g[2][1], g[2][2]};
    }

    FloorProjection projection() {
        return new FloorProjection(Homography.of(floorToIdeal()), Lens.centred(width, height, k));
    }

    boolean inPicture(double[] film) {
        return film != null && film[0] >= 0 && film[1] >= 0 && film[0] <= width - 1 && film[1] <= height - 1;
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    private static double[] unit(double[] a) {
        double length = Math.sqrt(dot(a, a));
        return new double[] {a[0] / length, a[1] / length, a[2] / length};
    }
}
