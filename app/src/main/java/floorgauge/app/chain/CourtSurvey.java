package floorgauge.app.chain;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtMark;
import floorgauge.court.calibration.CourtOverTime;
import floorgauge.court.calibration.CourtOverlay;
import floorgauge.court.calibration.PointsFit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.opencv.core.Mat;

/**
 * Where the court was found in a film, and from what.
 *
 * @param courts may be of status NONE all through
 * @param points the fit of marked points; empty where the lines were used
 * @param marked the points as marked; empty where the lines were used
 * @param saved what became of a saved court, in one sentence; empty where none was given or it was not looked at
 */
public record CourtSurvey(
        CourtOverTime courts, Optional<PointsFit> points, List<CourtMark> marked, Optional<String> saved) {

    public CourtSurvey {
        Objects.requireNonNull(courts, "courts");
        Objects.requireNonNull(points, "points");
        Objects.requireNonNull(saved, "saved");
        marked = List.copyOf(marked);
    }

    static CourtSurvey fromLines(CourtOverTime courts, Optional<String> saved) {
        return new CourtSurvey(courts, Optional.empty(), List.of(), saved);
    }

    static CourtSurvey fromPoints(PointsFit fit, List<CourtMark> marked) {
        return new CourtSurvey(CourtOverTime.still(fit.calibration()), Optional.of(fit), marked, Optional.empty());
    }

    /** Of a camera that stands still; of one that moves, the first that is not none, if any is. */
    public CourtCalibration calibration() {
        return courts.first();
    }

    /** {@code points} or {@code lines}. */
    public String source() {
        return points.isPresent() ? "points" : "lines";
    }

    /** Draws the court over the frame of the film at a time, 8-bit BGR. */
    public void draw(Mat frame, double timeSeconds) {
        if (points.isPresent()) {
            CourtOverlay.draw(frame, points.get(), marked);
        } else {
            CourtOverlay.draw(frame, courts.at(timeSeconds));
        }
    }
}
