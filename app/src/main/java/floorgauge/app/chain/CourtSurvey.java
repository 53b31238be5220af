package floorgauge.app.chain;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtOverlay;
import floorgauge.court.calibration.MarkedPoint;
import floorgauge.court.calibration.PointsFit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.opencv.core.Mat;

/**
 * Where the court was found in a film, and from what.
 *
 * @param calibration may be of status NONE
 * @param points the fit of marked points; empty where the lines were used
 * @param marked the points as marked; empty where the lines were used
 */
public record CourtSurvey(CourtCalibration calibration, Optional<PointsFit> points, List<MarkedPoint> marked) {

    public CourtSurvey {
        Objects.requireNonNull(calibration, "calibration");
        Objects.requireNonNull(points, "points");
        marked = List.copyOf(marked);
    }

    static CourtSurvey fromLines(CourtCalibration calibration) {
        return new CourtSurvey(calibration, Optional.empty(), List.of());
    }

    static CourtSurvey fromPoints(PointsFit fit, List<MarkedPoint> marked) {
        return new CourtSurvey(fit.calibration(), Optional.of(fit), marked);
    }

    /** {@code points} or {@code lines}. */
    public String source() {
        return points.isPresent() ? "points" : "lines";
    }

    /** Draws the court over a frame of the film, 8-bit BGR. */
    public void draw(Mat frame) {
        if (points.isPresent()) {
            CourtOverlay.draw(frame, points.get(), marked);
        } else {
            CourtOverlay.draw(frame, calibration);
        }
    }
}
