package floorgauge.court.calibration;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A court from marked points and places on lines: direct linear transform, then least squares in the picture, then doubt
 * about each mark. The lens is estimated where the marks settle enough more than the court's place.
 */
final class PointsCalibrator {

    /** How well a person marks a point, as a share of the picture's diagonal: 1.5 pixels at 1280 x 720 (own figure). */
    private static final double MARK_ERROR = 0.001;

    /** How many residuals the expected error of a mark counts as much as, against those of the fit. */
    private static final double PRIOR_RESIDUALS = 4;

    /** Chi-square's 0.999 quantile with two degrees of freedom, -2 ln 0.001. */
    private static final double SUSPECT = -2 * Math.log(0.001);

    /** The same with one degree of freedom, 3.2905 squared. */
    private static final double SUSPECT_PLACE = 10.828;

    /** The margin in which marked points still carry the floor about them. */
    private static final double MARGIN_METRES = 2;

    /** With fewer figures than this beyond the court's eight a fit cannot be checked well enough to be called good. */
    private static final int GOOD_REDUNDANCY = 4;

    /** With fewer beyond the eight a bent lens cannot be told from a bad mark (own figure). */
    private static final int LENS_REDUNDANCY = 6;

    private static final int COURT_FIGURES = 8;

    private final RuleSet rules;
    private final List<CourtMark> marks;
    private final int width;
    private final int height;
    private final double markError;

    private PointsCalibrator(RuleSet rules, List<CourtMark> marks, int width, int height) {
        this.rules = rules;
        this.marks = marks;
        this.width = width;
        this.height = height;
        this.markError = MARK_ERROR * Math.hypot(width, height);
    }

    static PointsFit fit(RuleSet rules, List<CourtMark> marks, int width, int height) {
        PointsSanity.require(marks, width, height);
        return new PointsCalibrator(rules, marks, width, height).fit();
    }

    private PointsFit fit() {
        Optional<CourtMark> suspect = suspect();
        List<CourtMark> kept = new ArrayList<>(marks);
        suspect.ifPresent(kept::remove);
        ProjectionRefiner.Fit fit = fitOf(kept).orElseThrow(PointsCalibrator::doesNotFit);
        requireAbove(fit.projection());
        double sigma = sigma(fit, kept);
        FloorProjection projection = fit.projection();
        List<PointResidual> residuals =
                marks.stream().map(p -> residual(projection, p)).toList();
        CalibrationStatus status = status(kept, suspect, sigma);
        List<FloorPoint> carried = kept.stream()
                .flatMap(mark -> MarkObservations.floor(projection, mark).stream())
                .toList();
        CourtCalibration calibration = new CourtCalibration(
                rules,
                status,
                reason(kept, suspect, sigma, residuals),
                width,
                height,
                Optional.of(projection),
                fit.unitCovariance().scaled(sigma * sigma / (markError * markError)),
                Coverage.around(carried, MARGIN_METRES));
        return new PointsFit(calibration, residuals, suspect.map(CourtMark::label));
    }

    private Optional<ProjectionRefiner.Fit> fitOf(List<CourtMark> chosen) {
        int terms = redundancy(chosen) >= LENS_REDUNDANCY ? 1 : 0;
        return MarksDlt.fit(chosen, width, height)
                .map(h -> new FloorProjection(h, Lens.centred(width, height, 0)))
                .flatMap(start -> ProjectionRefiner.refine(start, new MarkObservations(chosen, markError), terms));
    }

    private static int redundancy(List<CourtMark> marks) {
        return marks.stream().mapToInt(CourtMark::settles).sum() - COURT_FIGURES;
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
    private double sigma(ProjectionRefiner.Fit fit, List<CourtMark> fitted) {
        return markError * Math.sqrt((PRIOR_RESIDUALS + fit.cost()) / (PRIOR_RESIDUALS + redundancy(fitted)));
    }

    /**
     * The mark that the others put farthest from its place, if by more than chance: its mark against the fit of all others,
     * over the covariance of both. Where the others settle little more than the court's place, they cannot tell.
     */
    private Optional<CourtMark> suspect() {
        if (redundancy(marks) < GOOD_REDUNDANCY) {
            return Optional.empty();
        }
        double worst = SUSPECT;
        CourtMark found = null;
        for (CourtMark mark : marks) {
            List<CourtMark> others = new ArrayList<>(marks);
            others.remove(mark);
            double distance = squaredDistance(mark, others);
            if (distance > worst) {
                worst = distance;
                found = mark;
            }
        }
        return Optional.ofNullable(found);
    }

    /** Squared over the covariance; that of a place is brought to the scale of a point's two degrees of freedom. */
    private double squaredDistance(CourtMark mark, List<CourtMark> others) {
        Optional<ProjectionRefiner.Fit> fit = fitOf(others);
        if (fit.isEmpty()) {
            return 0;
        }
        double sigma = sigma(fit.get(), others);
        double[] residual = new double[2];
        double[][] by = new double[2][FloorProjection.PARAMETERS];
        int count = MarkObservations.rows(fit.get().projection(), mark, residual, by);
        if (count == 0) {
            return 0;
        }
        ProjectionCovariance covariance = fit.get().unitCovariance().scaled(sigma * sigma / (markError * markError));
        double xx = sigma * sigma + covariance.between(by[0], by[0]);
        double dx = residual[0];
        if (count == 1) {
            return dx * dx / xx * SUSPECT / SUSPECT_PLACE;
        }
        double yy = sigma * sigma + covariance.between(by[1], by[1]);
        double xy = covariance.between(by[0], by[1]);
        double dy = residual[1];
        return (dx * dx * yy - 2 * dx * dy * xy + dy * dy * xx) / (xx * yy - xy * xy);
    }

    private static PointResidual residual(FloorProjection projection, CourtMark mark) {
        Optional<FloorPoint> floor = MarkObservations.floor(projection, mark);
        Optional<PixelPoint> fitted = floor.flatMap(p -> projection.toFilm(p.xMetres(), p.yMetres()));
        Optional<FloorPoint> seen = projection.toFloor(mark.pixel());
        return new PointResidual(
                mark.label(),
                fitted.map(p -> mark.pixel().x() - p.x()).orElse(Double.POSITIVE_INFINITY),
                fitted.map(p -> mark.pixel().y() - p.y()).orElse(Double.POSITIVE_INFINITY),
                seen.flatMap(p -> floor.map(p::distanceTo)).orElse(Double.POSITIVE_INFINITY));
    }

    private CalibrationStatus status(List<CourtMark> kept, Optional<CourtMark> suspect, double sigma) {
        boolean good = redundancy(kept) >= GOOD_REDUNDANCY && suspect.isEmpty() && sigma <= 2 * markError;
        return good ? CalibrationStatus.GOOD : CalibrationStatus.WEAK;
    }

    private String reason(
            List<CourtMark> kept, Optional<CourtMark> suspect, double sigma, List<PointResidual> residuals) {
        boolean places = kept.stream().anyMatch(MarkedPlace.class::isInstance);
        String marked = places ? "marks" : "points";
        if (redundancy(kept) == 0) {
            return (places ? "So few marks" : "Four marked points")
                    + " fit any court, so nothing checks them; mark two more.";
        }
        if (suspect.isPresent()) {
            PointResidual off = residuals.get(marks.indexOf(suspect.get()));
            return String.format(
                    Locale.ROOT,
                    "%s lies %.1f pixels from where the other %d %s put it, and was left out; check its name and"
                            + " pixel.",
                    off.label(),
                    Math.hypot(off.xPixels(), off.yPixels()),
                    kept.size(),
                    marked);
        }
        String fit = String.format(
                Locale.ROOT,
                "%d %s fit with an error of %.1f pixels each",
                kept.size(),
                places ? "marked points and places on lines" : "marked points",
                sigma);
        if (sigma > 2 * markError) {
            return fit + ", which is more than a careful mark; check them one by one.";
        }
        return redundancy(kept) >= GOOD_REDUNDANCY
                ? fit + "."
                : fit + "; mark one more, so that a wrong one can be told.";
    }
}
