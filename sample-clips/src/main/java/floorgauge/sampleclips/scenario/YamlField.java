package floorgauge.sampleclips.scenario;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** A value in a YAML file that knows its file, line and path, so that each error can name them. */
final class YamlField {

    private final String file;
    private final String path;
    private final Node node;

    private YamlField(String file, String path, Node node) {
        this.file = file;
        this.path = path;
        this.node = node;
    }

    /** @throws ScenarioException where the text is no YAML or is empty */
    static YamlField parse(String file, String text) {
        try {
            Node root = new Yaml(new LoaderOptions()).compose(new StringReader(text));
            if (root == null) {
                throw new ScenarioException(file, 1, "the file is empty; expected a scenario");
            }
            return new YamlField(file, "", root);
        } catch (MarkedYAMLException e) {
            int line = e.getProblemMark() == null ? 1 : e.getProblemMark().getLine() + 1;
            throw new ScenarioException(file, line, "not YAML: " + e.getProblem());
        }
    }

    int line() {
        return node.getStartMark().getLine() + 1;
    }

    ScenarioException error(String what) {
        return new ScenarioException(file, line(), path.isEmpty() ? what : path + ": " + what);
    }

    /** Fields by name, in the order of the file. */
    Map<String, YamlField> fields() {
        if (!(node instanceof MappingNode mapping)) {
            throw error("expected fields (name: value)");
        }
        Map<String, YamlField> fields = new LinkedHashMap<>();
        for (NodeTuple tuple : mapping.getValue()) {
            if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
                throw error("expected a plain name before each colon");
            }
            String name = key.getValue();
            YamlField value = new YamlField(file, path.isEmpty() ? name : path + "." + name, tuple.getValueNode());
            if (fields.put(name, value) != null) {
                throw value.error("stands twice");
            }
        }
        return fields;
    }

    /** Refuses fields that nobody reads. */
    Map<String, YamlField> fields(Collection<String> known) {
        Map<String, YamlField> fields = fields();
        fields.forEach((name, field) -> {
            if (!known.contains(name)) {
                throw field.error("unknown field; expected one of " + String.join(", ", known));
            }
        });
        return fields;
    }

    YamlField required(String name) {
        YamlField field = fields().get(name);
        if (field == null) {
            throw error("field '" + name + "' is missing");
        }
        return field;
    }

    Optional<YamlField> optional(String name) {
        return Optional.ofNullable(fields().get(name));
    }

    List<YamlField> items() {
        if (!(node instanceof SequenceNode sequence)) {
            throw error("expected a list");
        }
        List<YamlField> items = new ArrayList<>();
        for (Node item : sequence.getValue()) {
            items.add(new YamlField(file, path + "[" + items.size() + "]", item));
        }
        return items;
    }

    boolean isList() {
        return node instanceof SequenceNode;
    }

    String text() {
        if (!(node instanceof ScalarNode scalar)) {
            throw error("expected a word");
        }
        return scalar.getValue();
    }

    double number(double least, double most) {
        String expected = "expected a number from " + plain(least) + " to " + plain(most);
        String text = node instanceof ScalarNode scalar ? scalar.getValue() : "";
        double value;
        try {
            value = Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw error(expected + ", found '" + text + "'");
        }
        if (!(value >= least && value <= most)) {
            throw error(expected + ", found " + text);
        }
        return value;
    }

    int wholeNumber(int least, int most) {
        double value = number(least, most);
        if (value != Math.rint(value)) {
            throw error("expected a whole number, found " + value);
        }
        return (int) value;
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
