package floorgauge.court.calibration;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the court is in the picture, and how far that can be trusted. Pixels are those of the film as stored.
 *
 * <p>With {@code p = f(X, g)} the projection of a floor point, a pixel's place on the floor has, to first order, the
 * covariance {@code A (S + J C J') A'}, where {@code A} is the inverse of {@code df/dX}, {@code S} the pixel's own
 * covariance, {@code J = df/dg} and {@code C} the covariance of the parameters.
 *
 * @param rules the court that was fitted; where the status is NONE, the one that was looked for
 * @param status good, weak or none
 * @param reason why, in one sentence
 * @param widthPixels of the picture
 * @param heightPixels of the picture
 * @param projection floor to film; empty if and only if the status is NONE
 * @param covariance of the projection's parameters
 * @param coverage where the calibration rests on evidence
 */
public record CourtCalibration(
        RuleSet rules,
        CalibrationStatus status,
        String reason,
        int widthPixels,
        int heightPixels,
        Optional<FloorProjection> projection,
        ProjectionCovariance covariance,
        Coverage coverage) {

    /** A screen's reach is 1.0 m and contact a gap of 0.1 m: with a larger error than this neither can be told. */
    static final double LARGEST_SUPPORTED_ERROR_METRES = 0.30;

    public CourtCalibration {
        Objects.requireNonNull(rules, "rules");
        Objects.requireNonNull(status, "status");
        Objects.requireNonNull(reason, "reason");
        Objects.requireNonNull(covariance, "covariance");
        Objects.requireNonNull(coverage, "coverage");
        if (widthPixels < 1 || heightPixels < 1) {
            throw new IllegalArgumentException("picture must have a size: " + widthPixels + " x " + heightPixels);
        }
        if (projection.isEmpty() != (status == CalibrationStatus.NONE)) {
            throw new IllegalArgumentException(
                    "status " + status + (projection.isEmpty() ? " without" : " with") + " a projection");
        }
    }

    /** No court: measures nothing. */
    public static CourtCalibration none(RuleSet looked, int widthPixels, int heightPixels, String reason) {
        return new CourtCalibration(
                looked,
                CalibrationStatus.NONE,
                reason,
                widthPixels,
                heightPixels,
                Optional.empty(),
                ProjectionCovariance.zero(),
                Coverage.none());
    }

    /**
     * A calibration that is known exactly, as a renderer's or a label's is.
     *
     * @param pixelToFloor row by row, pixels to metres in the court frame
     * @param widthPixels of the picture
     * @param heightPixels of the picture
     */
    public static CourtCalibration known(RuleSet rules, double[] pixelToFloor, int widthPixels, int heightPixels) {
        Homography back = Homography.of(pixelToFloor);
        FloorProjection projection = new FloorProjection(
                facing(back, widthPixels, heightPixels), Lens.centred(widthPixels, heightPixels, 0));
        double x = rules.lengthMetres() / 2;
        double y = rules.widthMetres() / 2;
        List<FloorPoint> corners =
                List.of(new FloorPoint(-x, -y), new FloorPoint(x, -y), new FloorPoint(x, y), new FloorPoint(-x, y));
        return new CourtCalibration(
                rules,
                CalibrationStatus.GOOD,
                "The camera is known.",
                widthPixels,
                heightPixels,
                Optional.of(projection),
                ProjectionCovariance.zero(),
                Coverage.around(corners, 5));
    }

    /** Floor to film with positive weight at the floor seen in the middle of the picture's lower edge. */
    private static Homography facing(Homography pixelToFloor, int widthPixels, int heightPixels) {
        Homography forward = pixelToFloor.inverse();
        double x = (widthPixels - 1) / 2.0;
        double y = heightPixels - 1.0;
        double weight = forward.weight(pixelToFloor.mapX(x, y), pixelToFloor.mapY(x, y));
        return weight < 0 ? forward.scaled(-1) : forward;
    }

    /** The same for another reason. */
    CourtCalibration withReason(String why) {
        return new CourtCalibration(rules, status, why, widthPixels, heightPixels, projection, covariance, coverage);
    }

    /**
     * A pixel's place on the floor.
     *
     * @param pixel film point
     * @param sigmaXPixels standard deviation of the pixel's own error to the right, at least 0
     * @param sigmaYPixels standard deviation of the pixel's own error downwards, at least 0
     * @throws IllegalStateException where the status is NONE
     * @throws IllegalArgumentException where the pixel does not see the floor; ask {@link #seesFloor} first
     */
    public FloorEstimate floorAt(PixelPoint pixel, double sigmaXPixels, double sigmaYPixels) {
        return estimate(pixel, sigmaXPixels, sigmaYPixels)
                .orElseThrow(() -> new IllegalArgumentException(
                        "(" + pixel.x() + ", " + pixel.y() + ") lies at or above the horizon"));
    }

    /** As {@link #floorAt}, but empty at and above the horizon. */
    public Optional<FloorEstimate> estimate(PixelPoint pixel, double sigmaXPixels, double sigmaYPixels) {
        if (!(sigmaXPixels >= 0 && sigmaYPixels >= 0)) {
            throw new IllegalArgumentException(
                    "standard deviations must be at least 0: " + sigmaXPixels + ", " + sigmaYPixels);
        }
        FloorProjection known = required();
        return known.toFloor(pixel)
                .flatMap(mean -> covarianceAt(known, mean, sigmaXPixels * sigmaXPixels, sigmaYPixels * sigmaYPixels)
                        .map(c -> new FloorEstimate(mean, c)));
    }

    /** Whether the pixel lies below the horizon. */
    public boolean seesFloor(PixelPoint pixel) {
        return required().toFloor(pixel).isPresent();
    }

    private Optional<FloorCovariance> covarianceAt(
            FloorProjection known, FloorPoint point, double varianceX, double varianceY) {
        double[][] byFloor = new double[2][2];
        double[][] byParameters = new double[2][FloorProjection.PARAMETERS];
        if (!known.derivatives(point.xMetres(), point.yMetres(), byFloor, byParameters)) {
            return Optional.empty();
        }
        double xx = varianceX + Math.max(0, covariance.between(byParameters[0], byParameters[0]));
        double yy = varianceY + Math.max(0, covariance.between(byParameters[1], byParameters[1]));
        double xy = covariance.between(byParameters[0], byParameters[1]);
        double limit = Math.sqrt(xx * yy);
        return onFloor(byFloor, xx, Math.max(-limit, Math.min(limit, xy)), yy);
    }

    /** {@code A P A'} with {@code A} the inverse of the 2 x 2 derivative. */
    private static Optional<FloorCovariance> onFloor(double[][] d, double xx, double xy, double yy) {
        double determinant = d[0][0] * d[1][1] - d[0][1] * d[1][0];
        double a = d[1][1] / determinant;
        double b = -d[0][1] / determinant;
        double c = -d[1][0] / determinant;
        double e = d[0][0] / determinant;
        double floorXx = a * a * xx + 2 * a * b * xy + b * b * yy;
        double floorYy = c * c * xx + 2 * c * e * xy + e * e * yy;
        double floorXy = a * c * xx + (a * e + b * c) * xy + b * e * yy;
        double limit = Math.sqrt(Math.max(0, floorXx) * Math.max(0, floorYy));
        if (!Double.isFinite(limit)) {
            return Optional.empty();
        }
        return Optional.of(new FloorCovariance(
                Math.max(0, floorXx), Math.max(-limit, Math.min(limit, floorXy)), Math.max(0, floorYy)));
    }

    /**
     * Where a floor point appears in the film; may lie outside the picture.
     *
     * @throws IllegalArgumentException where it is behind the camera
     */
    public PixelPoint pixelAt(FloorPoint point) {
        return required()
                .toFilm(point.xMetres(), point.yMetres())
                .orElseThrow(() -> new IllegalArgumentException(
                        "(" + point.xMetres() + ", " + point.yMetres() + ") m is behind the camera"));
    }

    /** Where a point above the floor appears in the film; empty where the camera is not known or it is behind it. */
    public Optional<PixelPoint> pixelAt(double xMetres, double yMetres, double zMetres) {
        return zMetres == 0
                ? required().toFilm(xMetres, yMetres)
                : camera().flatMap(camera -> camera.toFilm(xMetres, yMetres, zMetres));
    }

    /** The whole camera, from the homography with square pixels and centred principal point; empty where it isn't told. */
    public Optional<PinholeCamera> camera() {
        return PinholeCamera.of(required());
    }

    /** How long, in pixels, an upright of this height appears at a floor point; empty where the camera is not known. */
    public OptionalDouble heightInPixels(FloorPoint foot, double heightMetres) {
        Optional<PixelPoint> top = pixelAt(foot.xMetres(), foot.yMetres(), heightMetres);
        Optional<PixelPoint> bottom = required().toFilm(foot.xMetres(), foot.yMetres());
        if (top.isEmpty() || bottom.isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(top.get().distanceTo(bottom.get()));
    }

    /** The homography from pixels of the ideal picture to metres in the court frame, row by row, last entry 1 or norm 1. */
    public double[] homographyPixelToFloor() {
        Homography back = required().floorToIdeal().inverse();
        double last = back.at(2, 2);
        boolean usable = Math.abs(last) > 1e-9 * back.norm();
        return back.scaled(1 / (usable ? last : back.norm())).rowMajor();
    }

    /** Whether the evidence carries this part of the floor: inside the coverage, and the calibration's own error small. */
    public boolean supports(FloorPoint point) {
        return projection.isPresent()
                && coverage.holds(point)
                && errorOfCalibration(point).orElse(Double.POSITIVE_INFINITY) <= LARGEST_SUPPORTED_ERROR_METRES;
    }

    /** Standard error in metres that the calibration alone adds at a floor point; empty where it is out of sight. */
    public OptionalDouble errorOfCalibration(FloorPoint point) {
        Optional<FloorCovariance> own = covarianceAt(required(), point, 0, 0);
        return own.isPresent() ? OptionalDouble.of(own.get().standardErrorMetres()) : OptionalDouble.empty();
    }

    private FloorProjection required() {
        return projection.orElseThrow(() -> new IllegalStateException("there is no calibration: " + reason));
    }
}
