package floorgauge.court.calibration;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A court from marked points: direct linear transform, then least squares in the picture, then doubt about each point. */
final class PointsCalibrator {

    /** How well a person marks a point, as a share of the picture's diagonal: 1.5 pixels at 1280 x 720 (own figure). */
    private static final double MARK_ERROR = 0.001;

    /** How many residuals the expected error of a mark counts as much as, against those of the fit. */
    private static final double PRIOR_RESIDUALS = 4;

    /** Chi-square's 0.999 quantile with two degrees of freedom, -2 ln 0.001. */
    private static final double SUSPECT = -2 * Math.log(0.001);

    /** The margin in which marked points still carry the floor about them. */
    private static final double MARGIN_METRES = 2;

    /** With fewer points than this a fit cannot be checked well enough to be called good. */
    private static final int GOOD_POINTS = 6;

    private final RuleSet rules;
    private final List<MarkedPoint> points;
    private final int width;
    private final int height;
    private final double markError;

    private PointsCalibrator(RuleSet rules, List<MarkedPoint> points, int width, int height) {
        this.rules = rules;
        this.points = points;
        this.width = width;
        this.height = height;
        this.markError = MARK_ERROR * Math.hypot(width, height);
    }

    static PointsFit fit(RuleSet rules, List<MarkedPoint> points, int width, int height) {
        PointsSanity.require(points, width, height);
        return new PointsCalibrator(rules, points, width, height).fit();
    }

    private PointsFit fit() {
        Optional<MarkedPoint> suspect = suspect();
        List<MarkedPoint> kept = new ArrayList<>(points);
        suspect.ifPresent(kept::remove);
        ProjectionRefiner.Fit fit = fitOf(kept).orElseThrow(PointsCalibrator::doesNotFit);
        requireAbove(fit.projection());
        double sigma = sigma(fit, kept.size());
        FloorProjection projection = fit.projection();
        List<PointResidual> residuals =
                points.stream().map(p -> residual(projection, p)).toList();
        CalibrationStatus status = status(kept.size(), suspect, sigma);
        CourtCalibration calibration = new CourtCalibration(
                rules,
                status,
                reason(kept.size(), suspect, sigma, residuals),
                width,
                height,
                Optional.of(projection),
                fit.unitCovariance().scaled(sigma * sigma / (markError * markError)),
                Coverage.around(kept.stream().map(MarkedPoint::floor).toList(), MARGIN_METRES));
        return new PointsFit(calibration, residuals, suspect.map(MarkedPoint::label));
    }

    private Optional<ProjectionRefiner.Fit> fitOf(List<MarkedPoint> chosen) {
        return NormalisedDlt.fit(PointsSanity.floor(chosen), PointsSanity.film(chosen))
                .flatMap(h -> oriented(h, chosen))
                .map(h -> new FloorProjection(h, Lens.centred(width, height, 0)))
                .flatMap(start -> ProjectionRefiner.refine(start, new PointObservations(chosen, markError), false));
    }

    /** The sign that puts the points before the camera; empty where they stand on both sides of it. */
    private static Optional<Homography> oriented(Homography h, List<MarkedPoint> chosen) {
        long before = chosen.stream()
                .filter(p -> h.weight(p.floor().xMetres(), p.floor().yMetres()) > 0)
                .count();
        if (before == chosen.size()) {
            return Optional.of(h);
        }
        return before == 0 ? Optional.of(h.scaled(-1)) : Optional.empty();
    }

    private static MendableException doesNotFit() {
        return new MendableException("no camera sees the marked points so; a name or a pixel is wrong for at least one,"
                + " or two are exchanged");
    }

    /**
     * From above, a turn from x towards y goes against the clock; in a picture, whose y points down, that turn has a
     * negative determinant, which with positive weights is the sign of the homography's own.
     */
    private static void requireAbove(FloorProjection projection) {
        if (projection.floorToIdeal().determinant() > 0) {
            throw new MendableException("the marked points are mirrored: they fit only a camera below the floor;"
                    + " exchange left and right, or near and far, in all their names");
        }
    }

    /** Error of a mark in pixels: the expected one and the residuals', weighed by how many there are of each. */
    private double sigma(ProjectionRefiner.Fit fit, int count) {
        double degrees = 2.0 * count - 8;
        return markError * Math.sqrt((PRIOR_RESIDUALS + fit.cost()) / (PRIOR_RESIDUALS + degrees));
    }

    /**
     * The point that the others put farthest from its mark, if by more than chance: its mark against the fit of all
     * others, over the covariance of both. Fewer than six points cannot tell which of them is wrong.
     */
    private Optional<MarkedPoint> suspect() {
        if (points.size() < 6) {
            return Optional.empty();
        }
        double worst = SUSPECT;
        MarkedPoint found = null;
        for (MarkedPoint point : points) {
            List<MarkedPoint> others = new ArrayList<>(points);
            others.remove(point);
            double distance = squaredDistance(point, others);
            if (distance > worst) {
                worst = distance;
                found = point;
            }
        }
        return Optional.ofNullable(found);
    }

    private double squaredDistance(MarkedPoint point, List<MarkedPoint> others) {
        Optional<ProjectionRefiner.Fit> fit = fitOf(others);
        if (fit.isEmpty()) {
            return 0;
        }
        double sigma = sigma(fit.get(), others.size());
        FloorProjection projection = fit.get().projection();
        double[][] byFloor = new double[2][2];
        double[][] by = new double[2][FloorProjection.PARAMETERS];
        Optional<PixelPoint> predicted =
                projection.toFilm(point.floor().xMetres(), point.floor().yMetres());
        if (predicted.isEmpty()
                || !projection.derivatives(
                        point.floor().xMetres(), point.floor().yMetres(), byFloor, by)) {
            return 0;
        }
        ProjectionCovariance covariance = fit.get().unitCovariance().scaled(sigma * sigma / (markError * markError));
        double xx = sigma * sigma + covariance.between(by[0], by[0]);
        double yy = sigma * sigma + covariance.between(by[1], by[1]);
        double xy = covariance.between(by[0], by[1]);
        double dx = point.pixel().x() - predicted.get().x();
        double dy = point.pixel().y() - predicted.get().y();
        return (dx * dx * yy - 2 * dx * dy * xy + dy * dy * xx) / (xx * yy - xy * xy);
    }

    private static PointResidual residual(FloorProjection projection, MarkedPoint point) {
        Optional<PixelPoint> fitted =
                projection.toFilm(point.floor().xMetres(), point.floor().yMetres());
        Optional<FloorPoint> seen = projection.toFloor(point.pixel());
        return new PointResidual(
                point.label(),
                fitted.map(p -> point.pixel().x() - p.x()).orElse(Double.POSITIVE_INFINITY),
                fitted.map(p -> point.pixel().y() - p.y()).orElse(Double.POSITIVE_INFINITY),
                seen.map(p -> p.distanceTo(point.floor())).orElse(Double.POSITIVE_INFINITY));
    }

    private CalibrationStatus status(int kept, Optional<MarkedPoint> suspect, double sigma) {
        boolean good = kept >= GOOD_POINTS && suspect.isEmpty() && sigma <= 2 * markError;
        return good ? CalibrationStatus.GOOD : CalibrationStatus.WEAK;
    }

    private String reason(int kept, Optional<MarkedPoint> suspect, double sigma, List<PointResidual> residuals) {
        if (kept == 4) {
            return "Four marked points fit any court, so nothing checks them; mark two more.";
        }
        if (suspect.isPresent()) {
            PointResidual off = residuals.get(points.indexOf(suspect.get()));
            return String.format(
                    Locale.ROOT,
                    "%s lies %.1f pixels from where the other %d points put it, and was left out; check its name and"
                            + " pixel.",
                    off.label(),
                    Math.hypot(off.xPixels(), off.yPixels()),
                    kept);
        }
        String fit = String.format(Locale.ROOT, "%d marked points fit with an error of %.1f pixels each", kept, sigma);
        if (sigma > 2 * markError) {
            return fit + ", which is more than a careful mark; check them one by one.";
        }
        return kept >= GOOD_POINTS ? fit + "." : fit + "; mark one more, so that a wrong one can be told.";
    }
}
