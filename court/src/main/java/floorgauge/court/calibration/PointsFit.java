package floorgauge.court.calibration;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A calibration from marked points, with what a person needs to judge the marks.
 *
 * @param calibration never of status NONE: points that cannot be fitted are an error with a message
 * @param residuals one a point, in the order given
 * @param suspect label of the point that the others contradict, which was left out of the fit; empty where none is
 */
public record PointsFit(CourtCalibration calibration, List<PointResidual> residuals, Optional<String> suspect) {

    public PointsFit {
        Objects.requireNonNull(calibration, "calibration");
        Objects.requireNonNull(suspect, "suspect");
        residuals = List.copyOf(residuals);
    }
}
