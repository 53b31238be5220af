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
 * @param calibration what was found
 * @param supported feet where the calibration says that its evidence carries
 * @param medianMetres error over all feet in the picture; infinite without a calibration
 * @param feet how many feet were in the picture
 * @param seconds processor time that finding the court took
 */
public record ViewOutcome(
        CourtView view,
        CourtCalibration calibration,
        List<FloorErrors.Sample> supported,
        double medianMetres,
        int feet,
        double seconds) {

    /** A court that lies farther off than this is not found. */
    public static final double FOUND_METRES = 0.30;

    public ViewOutcome {
        Objects.requireNonNull(view, "view");
        Objects.requireNonNull(calibration, "calibration");
        supported = List.copyOf(supported);
    }

    static ViewOutcome of(CourtView view, CourtCalibration calibration, List<CourtView.Foot> feet, double seconds) {
        if (calibration.status() == CalibrationStatus.NONE) {
            return new ViewOutcome(view, calibration, List.of(), Double.POSITIVE_INFINITY, feet.size(), seconds);
        }
        double straight = median(calibration, feet, false);
        double turned = median(calibration, feet, true);
        boolean turn = turned < straight;
        List<FloorErrors.Sample> supported = new ArrayList<>();
        for (CourtView.Foot foot : feet) {
            FloorPoint truth = turn ? foot.floor().turnedHalf() : foot.floor();
            Optional<FloorEstimate> estimate = calibration.estimate(foot.pixel(), 0, 0);
            estimate.filter(e -> calibration.supports(e.mean()))
                    .ifPresent(e -> supported.add(new FloorErrors.Sample(truth, e)));
        }
        return new ViewOutcome(view, calibration, supported, Math.min(straight, turned), feet.size(), seconds);
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
        return calibration.status() == CalibrationStatus.GOOD && !found();
    }
}
