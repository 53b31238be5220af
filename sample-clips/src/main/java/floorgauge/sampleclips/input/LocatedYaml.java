package floorgauge.sampleclips.input;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Reads YAML. */
public final class LocatedYaml {

    private final String file;

    private LocatedYaml(String file) {
        this.file = file;
    }

    /**
     * @param file its name, for messages
     * @param text the YAML
     * @throws InputException where the text is no YAML, is empty, or names a field twice
     */
    public static LocatedValue parse(String file, String text) {
        try {
            Node root = new Yaml(new LoaderOptions()).compose(new StringReader(text));
            if (root == null) {
                throw new InputException(file, 1, "the file is empty");
            }
            return new LocatedYaml(file).value("", root);
        } catch (MarkedYAMLException e) {
            int line = e.getProblemMark() == null ? 1 : e.getProblemMark().getLine() + 1;
            throw new InputException(file, line, "not YAML: " + e.getProblem());
        }
    }

    private LocatedValue value(String path, Node node) {
        int line = node.getStartMark().getLine() + 1;
        if (node instanceof ScalarNode scalar) {
            return new LocatedValue(file, line, path, scalar.getValue());
        }
        if (node instanceof SequenceNode sequence) {
            List<LocatedValue> items = new ArrayList<>();
            for (Node item : sequence.getValue()) {
                items.add(value(path + "[" + items.size() + "]", item));
            }
            return new LocatedValue(file, line, path, items);
        }
        if (!(node instanceof MappingNode mapping)) {
            throw new InputException(file, line, "expected a value, found an alias");
        }
        Map<String, LocatedValue> fields = new LinkedHashMap<>();
        for (NodeTuple tuple : mapping.getValue()) {
            if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
                throw new InputException(file, line, "expected a plain name before each colon");
            }
            String name = key.getValue();
            LocatedValue field = value(path.isEmpty() ? name : path + "." + name, tuple.getValueNode());
            if (fields.put(name, field) != null) {
                throw field.error("stands twice");
            }
        }
        return new LocatedValue(file, line, path, fields);
    }
}
