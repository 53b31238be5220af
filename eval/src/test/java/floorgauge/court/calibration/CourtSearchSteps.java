package floorgauge.court.calibration;

import floorgauge.court.lines.EvidenceMap;
import floorgauge.court.lines.RidgeFinder;
import floorgauge.court.lines.RidgeIndex;
import floorgauge.court.lines.RidgePoint;
import floorgauge.court.lines.SegmentFinder;
import java.util.List;
import org.opencv.core.Mat;

/** The steps of the search for a court one by one, for timing; stands in their package, for none of them is public. */
public final class CourtSearchSteps {

    private final FloorProjection projection;
    private final CourtScore score;
    private final LinesVerdict verdict;

    /**
     * @param found the court in the picture, not of status NONE
     * @param picture at most 1280 pixels wide
     */
    public CourtSearchSteps(CourtCalibration found, Mat picture) {
        int width = picture.cols();
        int height = picture.rows();
        List<RidgePoint> points =
                SegmentFinder.inCompany(RidgeFinder.find(picture), width, height, Math.max(4, width / 160));
        CourtSamples samples = CourtSamples.of(found.rules(), 0.25);
        projection = found.projection().orElseThrow();
        score = new CourtScore(samples, new EvidenceMap(points, width, height, width / 640.0));
        verdict = new LinesVerdict(
                found.rules(), samples, new RidgeIndex(points, width, height), width, height, width, height);
    }

    /** How well the whole court explains the picture: asked of some ten thousand courts in a search. */
    public double score() {
        return score.of(projection.floorToIdeal(), projection.lens());
    }

    /** The last fit of the court's lines to the paint, with each line's own place, and its verdict. */
    public LinesFit refine() {
        return verdict.of(projection, LinesVerdict.Scores.alone(100));
    }
}
