package floorgauge.court.calibration;

import floorgauge.court.failure.MendableException;
import floorgauge.court.rules.RuleSet;
import java.util.List;
import java.util.Optional;
import org.opencv.core.Mat;

/** Finds the court in the picture: from points that a person marked, or from the painted lines alone. */
public final class CourtCalibrator {

    private CourtCalibrator() {}

    /**
     * From marked points and places on lines.
     *
     * @param rules of the court
     * @param points at least four, not in one line, each once, in the picture; or places on lines that settle as much
     * @param width of the film, pixels
     * @param height of the film, pixels
     * @throws MendableException saying what is wrong with the points where no camera sees them so
     */
    public static CourtCalibration fromPoints(RuleSet rules, List<? extends CourtMark> points, int width, int height) {
        return fitPoints(rules, points, width, height).calibration();
    }

    /** As {@link #fromPoints}, with each point's residual and the one that is suspect. */
    public static PointsFit fitPoints(RuleSet rules, List<? extends CourtMark> points, int width, int height) {
        return PointsCalibrator.fit(rules, List.copyOf(points), width, height);
    }

    /**
     * From a file of marked points.
     *
     * @throws MendableException naming the file, and the line where there is one
     */
    public static PointsFit fitPoints(RuleSet rules, PointsFile file, int width, int height) {
        List<CourtMark> points = file.marks(rules, width, height);
        try {
            return fitPoints(rules, points, width, height);
        } catch (MendableException wrong) {
            throw new MendableException(file.file() + ": " + wrong.getMessage(), wrong);
        }
    }

    /**
     * From the painted lines that a static camera sees, without a click.
     *
     * @param rules of the court; empty to find the rule book whose lines fit best
     * @param frames at least one, all of one size, 8 bits, BGR, left unchanged; a dozen or more spread over the film, so
     *     that people who move leave the background
     * @return never null: status NONE, with the reason, where there is no court
     */
    public static CourtCalibration fromLines(Optional<RuleSet> rules, List<Mat> frames) {
        return fitLines(rules, frames).calibration();
    }

    /** As {@link #fromLines}, with what the calibration rests on. */
    public static LinesFit fitLines(Optional<RuleSet> rules, List<Mat> frames) {
        return LinesCalibrator.fit(rules.map(List::of).orElseGet(RuleSet::all), frames);
    }
}
