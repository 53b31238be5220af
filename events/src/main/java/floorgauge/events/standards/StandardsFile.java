package floorgauge.events.standards;

import floorgauge.events.yaml.NearestWord;
import floorgauge.events.yaml.YamlText;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * Reads a standards file: YAML with one level of groups, each value a number and its unit. What it leaves out keeps the
 * value of the base, so a team's file holds only what differs.
 *
 * <pre>
 * team: Harbour Gulls
 * screen:
 *   contact-gap: 0.10 m
 * spacing:
 *   crowded-distance: 8 ft
 * </pre>
 */
public final class StandardsFile {

    private static final Pattern VALUE = Pattern.compile("\\s*([-+]?[0-9]*\\.?[0-9]+)\\s*([^\\s]*)\\s*");
    private static final String TEAM = "team";

    private final String source;
    private final EnumMap<Setting, Double> values;
    private String team;

    private StandardsFile(String source, Standards base) {
        this.source = source;
        this.values = new EnumMap<>(base.values());
        this.team = base.team();
    }

    /**
     * @param text of the file
     * @param source the file's name, for messages
     * @param base what holds where the file says nothing
     * @throws StandardsException with the line, the key and a hint
     */
    public static Standards read(String text, String source, Standards base) {
        StandardsFile file = new StandardsFile(source, base);
        Optional<Node> root = YamlText.parse(text, (line, message) -> new StandardsException(source, line, message));
        root.ifPresent(file::readRoot);
        return new Standards(file.team, file.values);
    }

    private void readRoot(Node root) {
        Set<String> seen = new HashSet<>();
        for (NodeTuple entry : mapping(root, "the file").getValue()) {
            String key = key(entry, seen, "");
            if (key.equals(TEAM)) {
                team = scalar(entry.getValueNode(), TEAM).getValue();
            } else if (groups().contains(key)) {
                readGroup(key, entry.getValueNode());
            } else {
                throw unknown(entry.getKeyNode(), key, groups());
            }
        }
    }

    private void readGroup(String group, Node node) {
        Set<String> seen = new HashSet<>();
        for (NodeTuple entry : mapping(node, group).getValue()) {
            String key = key(entry, seen, group + ".");
            Setting setting = Setting.ofKey(group + "." + key)
                    .orElseThrow(() -> unknown(entry.getKeyNode(), group + "." + key, keys(group)));
            values.put(setting, value(setting, scalar(entry.getValueNode(), setting.key())));
        }
    }

    private double value(Setting setting, ScalarNode node) {
        Quantity quantity = setting.quantity();
        Matcher matcher = VALUE.matcher(node.getValue());
        if (!matcher.matches()) {
            throw at(
                    node,
                    setting.key() + " is not a number with a unit: '" + node.getValue() + "'; write for example "
                            + quantity.example());
        }
        String unit = matcher.group(2);
        double factor = quantity.factor(unit).orElseThrow(() -> wrongUnit(node, setting, unit));
        double value = Double.parseDouble(matcher.group(1)) * factor;
        if (!(value >= setting.least() && value <= setting.most())) {
            throw at(
                    node,
                    setting.key() + " is " + node.getValue().strip() + ", but must lie in " + setting.least() + " to "
                            + setting.most() + " " + quantity.unit() + " (" + setting.meaning() + ")");
        }
        return value;
    }

    private StandardsException wrongUnit(Node node, Setting setting, String unit) {
        List<String> units = setting.quantity().units();
        String problem = unit.isEmpty()
                ? setting.key() + " has no unit"
                : setting.key() + " has the unit '" + unit + "', which is not one of its own";
        String hint = units.isEmpty()
                ? "write a plain number"
                : "write " + setting.quantity().example();
        return at(node, problem + "; " + hint);
    }

    private StandardsException unknown(Node node, String key, List<String> known) {
        return at(node, "unknown key '" + key + "'; " + NearestWord.hint(key, known));
    }

    private static List<String> groups() {
        return Arrays.stream(Setting.values()).map(Setting::group).distinct().toList();
    }

    private static List<String> keys(String group) {
        return Arrays.stream(Setting.values())
                .filter(s -> s.group().equals(group))
                .map(Setting::key)
                .toList();
    }

    private String key(NodeTuple entry, Set<String> seen, String prefix) {
        String key = scalar(entry.getKeyNode(), "a key").getValue();
        if (!seen.add(key)) {
            throw at(entry.getKeyNode(), "'" + prefix + key + "' stands twice; keep one of the two");
        }
        return key;
    }

    private MappingNode mapping(Node node, String what) {
        if (node instanceof MappingNode mapping) {
            return mapping;
        }
        throw at(node, what + " must hold 'key: value' lines");
    }

    private ScalarNode scalar(Node node, String what) {
        if (node instanceof ScalarNode scalar) {
            return scalar;
        }
        throw at(node, what + " must be a single value");
    }

    private StandardsException at(Node node, String message) {
        return new StandardsException(source, YamlText.line(node), message);
    }

    /** The whole of a standards file with every setting, its unit and its meaning, ready to be changed. */
    public static String write(Standards standards) {
        StringBuilder text = new StringBuilder();
        if (!standards.team().isEmpty()) {
            text.append("team: \"").append(standards.team().replace("\"", "'")).append("\"\n");
        }
        String group = "";
        for (Map.Entry<Setting, Double> entry : standards.values().entrySet()) {
            Setting setting = entry.getKey();
            if (!setting.group().equals(group)) {
                group = setting.group();
                text.append(group).append(":\n");
            }
            String unit = setting.quantity().unit();
            text.append("  ").append(setting.setting()).append(": ").append(entry.getValue());
            text.append(unit.isEmpty() ? "" : " " + unit)
                    .append("  # ")
                    .append(setting.meaning())
                    .append('\n');
        }
        return text.toString();
    }
}
