package floorgauge.court.calibration;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.yaml.YamlNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.opencv.core.Mat;

/**
 * A calibration kept in a YAML file for other films that a camera took from the same place. Figures are written so that
 * they read back to the same bits.
 *
 * @param file where it is kept
 * @param calibration of the film that it was found in; never of status NONE
 */
public record SavedCourt(Path file, CourtCalibration calibration) {

    private static final int VERSION = 1;
    private static final int ENTRIES = FloorProjection.PARAMETERS * FloorProjection.PARAMETERS;

    /** A foot is placed no better than this: a court that lies no farther off is the same. */
    private static final double SAME_METRES = 0.05;

    private static final double GRID_METRES = 1;

    /**
     * Whether a saved court holds for another film.
     *
     * @param calibration the saved one, with a reason that says so; empty where it does not hold
     * @param words one sentence for the user
     */
    public record Check(Optional<CourtCalibration> calibration, String words) {}

    public SavedCourt {
        if (calibration.status() == CalibrationStatus.NONE) {
            throw new IllegalArgumentException("a court that was not found can't be kept");
        }
    }

    /** The text of the file. */
    public static String text(CourtCalibration found) {
        FloorProjection projection = found.projection().orElseThrow();
        Lens lens = projection.lens();
        String hull = found.coverage().hull().stream()
                .map(p -> numbers(p.xMetres(), p.yMetres()))
                .collect(Collectors.joining(", "));
        return "# Where a court lies in the picture, for films from the same camera place; made by floorgauge court --save\n"
                + "version: " + VERSION + "\n"
                + "rules: " + found.rules().name() + "\n"
                + "status: " + found.status().name().toLowerCase(Locale.ROOT) + "\n"
                + "picture: {width: " + found.widthPixels() + ", height: " + found.heightPixels() + "}\n"
                + "floorToPixel: " + numbers(projection.floorToIdeal().rowMajor()) + "\n"
                + "lens: {centre: " + numbers(lens.centreX(), lens.centreY()) + ", radius: " + lens.radiusPixels()
                + ", strengths: " + numbers(lens.k(), lens.l()) + "}\n"
                + "covariance: " + numbers(found.covariance().rowMajor()) + "\n"
                + "coverage: {hull: [" + hull + "], margin: " + found.coverage().marginMetres() + "}\n";
    }

    private static String numbers(double... values) {
        List<String> words = new ArrayList<>();
        for (double value : values) {
            words.add(Double.toString(value));
        }
        return "[" + String.join(", ", words) + "]";
    }

    /**
     * Reads a file that {@link #text} wrote.
     *
     * @throws MendableException naming file and line where it is not one
     */
    public static SavedCourt read(Path file) {
        YamlNode root = YamlNode.read(file);
        root.allowOnly("version", "rules", "status", "picture", "floorToPixel", "lens", "covariance", "coverage");
        YamlNode version = root.required("version");
        if (version.positiveInteger() != VERSION) {
            throw version.complaint("this program reads version " + VERSION + " of saved courts; save the court again");
        }
        YamlNode rulesName = root.required("rules");
        RuleSet rules = RuleSet.named(rulesName.text())
                .orElseThrow(() -> rulesName.complaint("unknown rule book: " + rulesName.text()));
        YamlNode picture = root.required("picture");
        YamlNode lens = root.required("lens");
        YamlNode coverage = root.required("coverage");
        List<FloorPoint> hull = coverage.required("hull").items().stream()
                .map(YamlNode::pair)
                .map(p -> new FloorPoint(p[0], p[1]))
                .toList();
        double[] centre = lens.required("centre").pair();
        double[] strengths = lens.required("strengths").pair();
        try {
            FloorProjection projection = new FloorProjection(
                    Homography.of(numbers(root.required("floorToPixel"), 9)),
                    new Lens(centre[0], centre[1], lens.required("radius").number(), strengths[0], strengths[1]));
            return new SavedCourt(
                    file,
                    new CourtCalibration(
                            rules,
                            status(root.required("status")),
                            "Saved in " + file.getFileName() + ".",
                            picture.required("width").positiveInteger(),
                            picture.required("height").positiveInteger(),
                            Optional.of(projection),
                            ProjectionCovariance.of(numbers(root.required("covariance"), ENTRIES)),
                            new Coverage(hull, coverage.required("margin").number())));
        } catch (IllegalArgumentException wrong) {
            throw new MendableException(
                    file + " holds no court that a camera could see (" + wrong.getMessage() + "); save the court again",
                    wrong);
        }
    }

    private static CalibrationStatus status(YamlNode node) {
        return switch (node.text()) {
            case "good" -> CalibrationStatus.GOOD;
            case "weak" -> CalibrationStatus.WEAK;
            default -> throw node.complaint("a saved court is good or weak, not \"" + node.text() + "\"");
        };
    }

    private static double[] numbers(YamlNode node, int count) {
        List<YamlNode> items = node.items();
        if (items.size() != count) {
            throw node.complaint("expected " + count + " numbers, but found " + items.size());
        }
        return items.stream().mapToDouble(YamlNode::number).toArray();
    }

    /**
     * Looks whether the court still lies there in another film: its painted lines are looked for where they should be, the
     * court is fitted to them, and the two are compared over the floor that the saved one carries.
     *
     * @param frames of the other film, as {@link CourtCalibrator#fromLines} takes them
     */
    public Check check(List<Mat> frames) {
        Mat first = frames.get(0);
        if (first.cols() != calibration.widthPixels() || first.rows() != calibration.heightPixels()) {
            return refused(String.format(
                    Locale.ROOT,
                    "it was saved from a film of %d x %d, and this one has %d x %d",
                    calibration.widthPixels(),
                    calibration.heightPixels(),
                    first.cols(),
                    first.rows()));
        }
        CourtCalibration now = LinesCalibrator.near(calibration, frames).calibration();
        if (now.status() == CalibrationStatus.NONE) {
            return refused("its lines are not where they were");
        }
        double moved = medianMove(now);
        if (!(moved <= SAME_METRES)) {
            return refused(String.format(Locale.ROOT, "half of the floor lies %.2f m or more beside it", moved));
        }
        String words = String.format(
                Locale.ROOT,
                "The court saved in %s still fits: half of the floor lies within %.3f m of it.",
                name(),
                moved);
        return new Check(Optional.of(calibration.withReason(words)), words);
    }

    private Check refused(String why) {
        return new Check(
                Optional.empty(),
                "The court saved in " + name() + " does not fit: " + why + "; it is looked for anew.");
    }

    private String name() {
        return String.valueOf(file.getFileName());
    }

    /** How far the other calibration puts what is in sight of the floor that this one carries, median; infinite without any. */
    private double medianMove(CourtCalibration now) {
        List<Double> moves = new ArrayList<>();
        double halfLength = calibration.rules().lengthMetres() / 2;
        double halfWidth = calibration.rules().widthMetres() / 2;
        for (double x = -halfLength; x <= halfLength; x += GRID_METRES) {
            for (double y = -halfWidth; y <= halfWidth; y += GRID_METRES) {
                FloorPoint at = new FloorPoint(x, y);
                if (calibration.supports(at)) {
                    calibration
                            .projection()
                            .flatMap(p -> p.toFilm(at.xMetres(), at.yMetres()))
                            .filter(p -> p.x() >= 0
                                    && p.y() >= 0
                                    && p.x() <= calibration.widthPixels() - 1
                                    && p.y() <= calibration.heightPixels() - 1)
                            .flatMap(p -> now.projection().flatMap(other -> other.toFloor(p)))
                            .ifPresent(p -> moves.add(p.distanceTo(at)));
                }
            }
        }
        moves.sort(null);
        return moves.isEmpty() ? Double.POSITIVE_INFINITY : moves.get(moves.size() / 2);
    }
}
