package floorgauge.court.rules;

import floorgauge.court.failure.MendableException;
import floorgauge.court.yaml.YamlNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * A YAML file that describes the floor of an odd gym: the rule book it follows, and what differs, in metres.
 *
 * <pre>
 * name: small-hall
 * like: fiba             # the rule book whose figures hold where none is given here
 * length: 24             # between the inner edges of the end lines
 * width: 13
 * unpainted:             # lines that this floor lacks, or how their names begin
 *   - negative-end       # one end alone: a half court, or a court for three against three
 *   - centre-circle
 * </pre>
 *
 * <p>Further fields: {@code lineWidth}, {@code laneWidth}, {@code freeThrowLine}, {@code threePointRadius}, {@code
 * threePointStraight}, {@code rimFromEndLine}, {@code noChargeRadius}, {@code circleRadius}, {@code boardFromEndLine}, {@code
 * rimHeight}; each is measured as {@link RuleSet} says. A floor with one end has it at x above 0, and its length is twice
 * the distance from the end line to the line that takes the place of the centre line.
 */
public final class GymFile {

    private static final String[] FIELDS = {
        "name",
        "like",
        "length",
        "width",
        "lineWidth",
        "laneWidth",
        "freeThrowLine",
        "threePointRadius",
        "threePointStraight",
        "rimFromEndLine",
        "noChargeRadius",
        "circleRadius",
        "boardFromEndLine",
        "rimHeight",
        "unpainted"
    };

    private GymFile() {}

    /**
     * Reads a floor.
     *
     * @throws MendableException naming file and line where it is not as described above
     */
    public static RuleSet read(Path file) {
        YamlNode root = YamlNode.read(file);
        root.allowOnly(FIELDS);
        YamlNode like = root.required("like");
        RuleSet book = RuleSet.named(like.text())
                .orElseThrow(() -> like.complaint(
                        "unknown rule book \"" + like.text() + "\"; there are fiba, nba, ncaa," + " nfhs"));
        RuleSet floor = new RuleSet(
                root.required("name").text(),
                metres(root, "length", book.lengthMetres()),
                metres(root, "width", book.widthMetres()),
                metres(root, "lineWidth", book.lineWidthMetres()),
                metres(root, "laneWidth", book.laneWidthMetres()),
                metres(root, "freeThrowLine", book.freeThrowLineMetres()),
                metres(root, "threePointRadius", book.threePointRadiusMetres()),
                metres(root, "threePointStraight", book.threePointStraightMetres()),
                metres(root, "rimFromEndLine", book.rimFromEndLineMetres()),
                noCharge(root, book),
                metres(root, "circleRadius", book.circleRadiusMetres()),
                metres(root, "boardFromEndLine", book.boardFromEndLineMetres()),
                metres(root, "rimHeight", book.rimHeightMetres()),
                unpainted(root, book));
        requireSound(root, floor);
        return floor;
    }

    private static double metres(YamlNode root, String field, double otherwise) {
        Optional<YamlNode> node = root.field(field);
        if (node.isEmpty()) {
            return otherwise;
        }
        double value = node.get().number();
        if (!(value > 0 && value < 60)) {
            throw node.get().complaint("\"" + field + "\" is in metres, above 0 and below 60, not " + value);
        }
        return value;
    }

    private static OptionalDouble noCharge(YamlNode root, RuleSet book) {
        return root.field("noChargeRadius").isPresent()
                ? OptionalDouble.of(metres(root, "noChargeRadius", 0))
                : book.noChargeRadiusMetres();
    }

    private static SortedSet<String> unpainted(YamlNode root, RuleSet book) {
        SortedSet<String> names = new TreeSet<>();
        List<String> known = book.paintedLines().stream().map(PaintedLine::name).toList();
        for (YamlNode name : root.field("unpainted").map(YamlNode::items).orElse(List.of())) {
            if (known.stream().noneMatch(line -> line.startsWith(name.text()))) {
                throw name.complaint("no line is called \"" + name.text() + "\", nor begins so; there are "
                        + String.join(", ", new TreeSet<>(known)));
            }
            names.add(name.text());
        }
        return names;
    }

    private static void requireSound(YamlNode root, RuleSet floor) {
        if (floor.paintedLines().isEmpty()) {
            throw root.complaint("this floor has no painted line");
        }
        for (Map.Entry<String, Double> across : Map.of(
                        "laneWidth",
                        floor.laneWidthMetres(),
                        "threePointStraight",
                        2 * floor.threePointStraightMetres())
                .entrySet()) {
            if (across.getValue() >= floor.widthMetres()) {
                throw root.complaint("\"" + across.getKey() + "\" does not fit into a width of " + floor.widthMetres()
                        + " m; give the figure of this floor");
            }
        }
        if (floor.freeThrowLineMetres() >= floor.lengthMetres() / 2) {
            throw root.complaint("the free-throw line does not fit into half of a length of " + floor.lengthMetres()
                    + " m; give the figure of this floor");
        }
    }
}
