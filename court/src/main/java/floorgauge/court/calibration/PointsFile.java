package floorgauge.court.calibration;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.CourtLines;
import floorgauge.court.rules.CourtPoint;
import floorgauge.court.rules.CourtPoints;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.yaml.YamlNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A YAML file in which a person marked court points and lines in a picture of the film:
 *
 * <pre>
 * picture: {width: 1280, height: 720}
 * rules: fiba                                    # optional
 * points:
 *   - {at: right-corner-far, pixel: [509.7, 346.4]}
 *   - {at: right-elbow-near, pixel: [710.8, 464.2]}
 *   - {metres: [12.5, -6.0], pixel: [811, 402]}  # any other floor point, court frame
 * lines:                                         # places anywhere on the middle of a painted line
 *   - {along: right-end-line, pixels: [[620.5, 371], [1011, 420.2]]}
 * </pre>
 *
 * <p>There may be points, lines, or both. Names are those of {@link CourtPoints} and {@link CourtLines}. Pixels are those of a picture of the given size; a film of the same shape in
 * another size is scaled.
 */
public final class PointsFile {

    /** Two shapes of picture whose sides differ by less than this share are the same shape. */
    private static final double SHAPE_TOLERANCE = 0.01;

    private final Path file;
    private final int width;
    private final int height;
    private final Optional<String> rulesName;
    private final List<YamlNode> entries;
    private final List<YamlNode> lines;

    private PointsFile(
            Path file,
            int width,
            int height,
            Optional<String> rulesName,
            List<YamlNode> entries,
            List<YamlNode> lines) {
        this.file = file;
        this.width = width;
        this.height = height;
        this.rulesName = rulesName;
        this.entries = entries;
        this.lines = lines;
    }

    /**
     * Reads a file; names are looked up later, when the rule set is known.
     *
     * @throws MendableException naming file and line where it is not as described above
     */
    public static PointsFile read(Path file) {
        YamlNode root = YamlNode.read(file);
        root.allowOnly("picture", "rules", "points", "lines");
        YamlNode picture = root.required("picture");
        picture.allowOnly("width", "height");
        Optional<String> rules = root.field("rules").map(YamlNode::text);
        Optional<YamlNode> lines = root.field("lines");
        Optional<YamlNode> points = lines.isPresent() ? root.field("points") : Optional.of(root.required("points"));
        return new PointsFile(
                file,
                picture.required("width").positiveInteger(),
                picture.required("height").positiveInteger(),
                rules,
                points.map(YamlNode::items).orElse(List.of()),
                lines.map(YamlNode::items).orElse(List.of()));
    }

    /** Where it was read from. */
    public Path file() {
        return file;
    }

    /** Width of the picture the points were marked in, pixels. */
    public int width() {
        return width;
    }

    /** Height of the picture the points were marked in, pixels. */
    public int height() {
        return height;
    }

    /** The rule book that the file names, if it names one. */
    public Optional<String> rulesName() {
        return rulesName;
    }

    /**
     * The points and places on a court of these rules, in pixels of a film of this size.
     *
     * @throws MendableException naming file and line: an unknown or repeated name, a mark off the picture, another shape
     */
    public List<CourtMark> marks(RuleSet rules, int filmWidth, int filmHeight) {
        double scale = (double) filmWidth / width;
        if (Math.abs(scale * height / filmHeight - 1) > SHAPE_TOLERANCE) {
            throw new MendableException(file + ": the points were marked in a picture of " + width + " x " + height
                    + ", which is not the shape of the film (" + filmWidth + " x " + filmHeight
                    + "); mark them in a frame of this film");
        }
        List<CourtMark> marks = new ArrayList<>();
        Map<FloorPoint, Integer> places = new HashMap<>();
        for (YamlNode entry : entries) {
            MarkedPoint point = point(entry, rules, scale);
            Integer before = places.putIfAbsent(point.floor(), entry.line());
            if (before != null) {
                throw entry.complaint(point.label() + " was already marked in line " + before);
            }
            marks.add(point);
        }
        Map<String, Integer> names = new HashMap<>();
        for (YamlNode entry : lines) {
            marks.addAll(places(entry, rules, scale, names));
        }
        return marks;
    }

    private List<MarkedPlace> places(YamlNode entry, RuleSet rules, double scale, Map<String, Integer> names) {
        entry.allowOnly("along", "pixels");
        YamlNode name = entry.required("along");
        PaintedLine line = CourtLines.named(rules, name.text()).orElseThrow(() -> unknownLine(name, rules));
        Integer before = names.putIfAbsent(name.text(), entry.line());
        if (before != null) {
            throw entry.complaint(
                    name.text() + " was already marked in line " + before + "; give all of its places in one entry");
        }
        List<MarkedPlace> places = new ArrayList<>();
        for (YamlNode pixel : entry.required("pixels").items()) {
            PixelPoint film = film(pixel, scale);
            String label = name.text() + ", place " + (places.size() + 1);
            if (places.stream().anyMatch(place -> place.pixel().equals(film))) {
                throw pixel.complaint(label + " is the same as one before; mark another place of the line");
            }
            places.add(new MarkedPlace(label, line, film));
        }
        if (places.isEmpty()) {
            throw entry.complaint(
                    name.text() + " has no places; give at least one, as pixels: [[100, 200], [300, 210]]");
        }
        return places;
    }

    /** A marked pixel in pixels of the film. */
    private PixelPoint film(YamlNode node, double scale) {
        double[] pixel = node.pair();
        if (pixel[0] < -0.5 || pixel[1] < -0.5 || pixel[0] > width - 0.5 || pixel[1] > height - 0.5) {
            throw node.complaint("pixel [" + pixel[0] + ", " + pixel[1] + "] lies off the picture, which is " + width
                    + " x " + height);
        }
        double shift = (scale - 1) / 2;
        return new PixelPoint(pixel[0] * scale + shift, pixel[1] * scale + shift);
    }

    private static MendableException unknownLine(YamlNode name, RuleSet rules) {
        String hint = CourtLines.nearestName(rules, name.text())
                .map(nearest -> "; did you mean " + nearest + "?")
                .orElse("; the names are listed by \"floorgauge court --names\"");
        return name.complaint("a " + rules.name() + " court has no line called \"" + name.text() + "\"" + hint);
    }

    private MarkedPoint point(YamlNode entry, RuleSet rules, double scale) {
        entry.allowOnly("at", "metres", "pixel");
        PixelPoint film = film(entry.required("pixel"), scale);
        Optional<YamlNode> name = entry.field("at");
        Optional<YamlNode> metres = entry.field("metres");
        if (name.isPresent() == metres.isPresent()) {
            throw entry.complaint("give either \"at\" (the name of a court point) or \"metres\" (its place), not both");
        }
        if (name.isPresent()) {
            String wanted = name.get().text();
            CourtPoint found = CourtPoints.named(rules, wanted).orElseThrow(() -> unknown(name.get(), rules));
            return new MarkedPoint(wanted, found.floor(), film);
        }
        double[] place = metres.orElseThrow().pair();
        return new MarkedPoint(
                "the point at [" + place[0] + ", " + place[1] + "] m", new FloorPoint(place[0], place[1]), film);
    }

    private static MendableException unknown(YamlNode name, RuleSet rules) {
        String hint = CourtPoints.nearestName(rules, name.text())
                .map(nearest -> "; did you mean " + nearest + "?")
                .orElse("; the names are listed by \"floorgauge court --names\"");
        return name.complaint("a " + rules.name() + " court has no point called \"" + name.text() + "\"" + hint);
    }
}
