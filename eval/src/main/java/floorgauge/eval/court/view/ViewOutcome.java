package floorgauge.eval.court.view;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.eval.court.FloorErrors;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * How a calibration does on a view. A court turned by 180 degrees is the same court, so the turn with the smaller error
 * counts.
 *
 * @param view which
 * @param status what the calibration says of itself
 * @param reason why
 * @param supported errors at feet where the calibration says that its evidence carries
 * @param medianMetres error over all feet in the picture; infinite without a calibration
 * @param feet how many feet were in the picture
 * @param seconds processor time that finding the court took, all threads together
 */
public record ViewOutcome(
        CourtView view,
        CalibrationStatus status,
        String reason,
        List<FootError> supported,
        double medianMetres,
        int feet,
        double seconds) {

    /** A court that lies farther off than this is not found. */
    public static final double FOUND_METRES = 0.30;

    public ViewOutcome {
        Objects.requireNonNull(view, "view");
        Objects.requireNonNull(status, "status");
        Objects.requireNonNull(reason, "reason");
        supported = List.copyOf(supported);
    }

    /**
     * Error at a foot.
     *
     * @param metres from where it stands to where the calibration puts it
     * @param squaredNormalised squared error over its covariance
     */
    public record FootError(double metres, double squaredNormalised) {

        static FootError of(FloorErrors.Sample sample) {
            return new FootError(sample.distanceMetres(), sample.squaredNormalisedDistance());
        }
    }

    static ViewOutcome of(CourtView view, CourtCalibration calibration, List<CourtView.Foot> feet, double seconds) {
        if (calibration.status() == CalibrationStatus.NONE) {
            return new ViewOutcome(
                    view,
                    calibration.status(),
                    calibration.reason(),
                    List.of(),
                    Double.POSITIVE_INFINITY,
                    feet.size(),
                    seconds);
        }
        double straight = median(calibration, feet, false);
        double turned = median(calibration, feet, true);
        boolean turn = turned < straight;
        List<FootError> supported = new ArrayList<>();
        for (CourtView.Foot foot : feet) {
            FloorPoint truth = turn ? foot.floor().turnedHalf() : foot.floor();
            Optional<FloorEstimate> estimate = calibration.estimate(foot.pixel(), 0, 0);
            estimate.filter(e -> calibration.supports(e.mean()))
                    .ifPresent(e -> supported.add(FootError.of(new FloorErrors.Sample(truth, e))));
        }
        return new ViewOutcome(
                view,
                calibration.status(),
                calibration.reason(),
                supported,
                Math.min(straight, turned),
                feet.size(),
                seconds);
    }

    private static double median(CourtCalibration calibration, List<CourtView.Foot> feet, boolean turn) {
        double[] errors = feet.stream()
                .mapToDouble(foot -> calibration
                        .estimate(foot.pixel(), 0, 0)
                        .map(e -> e.mean().distanceTo(turn ? foot.floor().turnedHalf() : foot.floor()))
                        .orElse(Double.POSITIVE_INFINITY))
                .sorted()
                .toArray();
        return errors.length == 0 ? Double.NaN : errors[errors.length / 2];
    }

    /** Whether the court was found where it lies. */
    public boolean found() {
        return medianMetres <= FOUND_METRES;
    }

    /** Whether a court that does not lie there was called good. */
    public boolean falseGood() {
        return status == CalibrationStatus.GOOD && !found();
    }
}
