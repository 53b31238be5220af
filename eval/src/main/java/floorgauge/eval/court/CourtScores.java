package floorgauge.eval.court;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.eval.statistics.Ratios;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A calibration against the known camera, over a grid of floor points that the camera sees.
 *
 * @param map error at each floor point that is in the picture
 * @param supported errors where the result says that its evidence carries
 * @param everywhere errors wherever the result places the floor at all
 * @param coverage share of the floor in the picture that the result says it carries, 0 to 1; NaN where no floor is in sight
 * @param visibleIou intersection over union of the floor that the known and the found camera see, 0 to 1 (as the sports field
 *     registration papers define it for the visible part, Jiang and others, 2020, "Optimizing through learned errors for
 *     accurate sports field registration"); NaN where neither sees any
 */
public record CourtScores(
        List<Cell> map, FloorErrors supported, FloorErrors everywhere, double coverage, double visibleIou) {

    /**
     * One point of the floor error map.
     *
     * @param floor where it is
     * @param errorMetres how far off the result places it; NaN where it places it nowhere
     * @param supported whether the result says that its evidence carries there
     */
    public record Cell(FloorPoint floor, double errorMetres, boolean supported) {}

    public CourtScores {
        map = List.copyOf(map);
        Objects.requireNonNull(supported, "supported");
        Objects.requireNonNull(everywhere, "everywhere");
    }

    /** Where the known camera shows the floor. */
    @FunctionalInterface
    public interface KnownView {

        /** @return in pixels of the result's picture, also beyond its edges; empty behind the camera */
        Optional<PixelPoint> pixelAt(FloorPoint floor);
    }

    /**
     * @param truth the known camera; its rule set is the court
     * @param result what was found, for the same picture size
     * @param stepMetres of the grid, above 0
     */
    public static CourtScores of(CourtCalibration truth, CourtCalibration result, double stepMetres) {
        if (truth.status() == CalibrationStatus.NONE) {
            throw new IllegalArgumentException("the truth must hold a camera");
        }
        return of(p -> truth.pixelAt(p.xMetres(), p.yMetres(), 0), truth.rules(), result, stepMetres);
    }

    /**
     * @param truth the known camera
     * @param rules of the court that it films
     * @param result what was found, for the same picture size
     * @param stepMetres of the grid, above 0
     */
    public static CourtScores of(KnownView truth, RuleSet rules, CourtCalibration result, double stepMetres) {
        if (!(stepMetres > 0)) {
            throw new IllegalArgumentException("a grid's step is above 0: " + stepMetres);
        }
        return new Comparison(truth, result).over(grid(rules, stepMetres));
    }

    private static List<FloorPoint> grid(RuleSet rules, double step) {
        List<FloorPoint> points = new ArrayList<>();
        int alongCount = (int) Math.floor(rules.lengthMetres() / step);
        int acrossCount = (int) Math.floor(rules.widthMetres() / step);
        for (int i = 0; i <= alongCount; i++) {
            for (int j = 0; j <= acrossCount; j++) {
                points.add(new FloorPoint((i - alongCount / 2.0) * step, (j - acrossCount / 2.0) * step));
            }
        }
        return points;
    }

    /** The two calibrations side by side. */
    private record Comparison(KnownView truth, CourtCalibration result) {

        CourtScores over(List<FloorPoint> grid) {
            List<Cell> map = new ArrayList<>();
            List<FloorErrors.Sample> supported = new ArrayList<>();
            List<FloorErrors.Sample> everywhere = new ArrayList<>();
            long both = 0;
            long either = 0;
            for (FloorPoint point : grid) {
                Optional<PixelPoint> pixel = truth.pixelAt(point).filter(this::inPicture);
                boolean seenByResult = seenByResult(point);
                both += pixel.isPresent() && seenByResult ? 1 : 0;
                either += pixel.isPresent() || seenByResult ? 1 : 0;
                if (pixel.isPresent()) {
                    Optional<FloorEstimate> measured = measured(pixel.get());
                    boolean carries = measured.isPresent()
                            && result.supports(measured.get().mean());
                    map.add(new Cell(
                            point, measured.map(m -> m.mean().distanceTo(point)).orElse(Double.NaN), carries));
                    measured.ifPresent(m -> everywhere.add(new FloorErrors.Sample(point, m)));
                    if (carries) {
                        supported.add(new FloorErrors.Sample(point, measured.get()));
                    }
                }
            }
            return new CourtScores(
                    map,
                    FloorErrors.of(supported),
                    FloorErrors.of(everywhere),
                    Ratios.of(supported.size(), map.size()),
                    Ratios.of(both, either));
        }

        private Optional<FloorEstimate> measured(PixelPoint pixel) {
            return result.status() == CalibrationStatus.NONE ? Optional.empty() : result.estimate(pixel, 0, 0);
        }

        private boolean seenByResult(FloorPoint point) {
            return result.status() != CalibrationStatus.NONE
                    && result.pixelAt(point.xMetres(), point.yMetres(), 0)
                            .filter(this::inPicture)
                            .isPresent();
        }

        private boolean inPicture(PixelPoint p) {
            return p.x() >= -0.5
                    && p.y() >= -0.5
                    && p.x() <= result.widthPixels() - 0.5
                    && p.y() <= result.heightPixels() - 0.5;
        }
    }
}
