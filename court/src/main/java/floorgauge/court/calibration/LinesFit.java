package floorgauge.court.calibration;

import floorgauge.court.floor.FloorPoint;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A calibration from painted lines, with what it rests on.
 *
 * @param calibration may be of status NONE
 * @param score log likelihood ratio of the painted court against chance, natural logarithm
 * @param runnerUpScore the same for the best court of the same rules that lies elsewhere; 0 where there is none
 * @param matchedShare share of the court's lines in sight at which paint was found, 0 to 1
 * @param oneColourShare share of them at which the paint has one colour, the same everywhere, 0 to 1
 * @param residualPixels robust standard deviation of the paint about the fitted lines, pixels of the film
 * @param lineShares for each painted line in sight, the share of it at which paint was found
 * @param matched floor points at which paint was found
 */
public record LinesFit(
        CourtCalibration calibration,
        double score,
        double runnerUpScore,
        double matchedShare,
        double oneColourShare,
        double residualPixels,
        SortedMap<String, Double> lineShares,
        List<FloorPoint> matched) {

    public LinesFit {
        Objects.requireNonNull(calibration, "calibration");
        lineShares = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(lineShares));
        matched = List.copyOf(matched);
    }

    /** Nothing was found. */
    static LinesFit none(CourtCalibration calibration) {
        return new LinesFit(calibration, 0, 0, 0, 0, 0, new TreeMap<>(), List.of());
    }
}
