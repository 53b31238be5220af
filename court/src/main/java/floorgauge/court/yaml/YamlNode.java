package floorgauge.court.yaml;

import floorgauge.court.failure.MendableException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * A piece of a YAML file and the line it stands on. Asking for what is not there throws a {@link MendableException} that
 * names the file, the line and what was expected.
 */
public final class YamlNode {

    private final Path file;
    private final int line;
    private final Object content;

    YamlNode(Path file, int line, Map<String, YamlNode> fields) {
        this(file, line, (Object) fields);
    }

    YamlNode(Path file, int line, List<YamlNode> items) {
        this(file, line, (Object) items);
    }

    YamlNode(Path file, int line, String text) {
        this(file, line, (Object) text);
    }

    private YamlNode(Path file, int line, Object content) {
        this.file = file;
        this.line = line;
        this.content = content;
    }

    /**
     * Reads a file that holds one YAML document.
     *
     * @throws MendableException where it cannot be read, is not YAML, or names a field twice
     */
    public static YamlNode read(Path file) {
        return YamlReader.read(file);
    }

    /** The line in the file, from 1. */
    public int line() {
        return line;
    }

    /** What is wrong, with file and line before it; to be thrown by the caller. */
    public MendableException complaint(String what) {
        return new MendableException(file + ", line " + line + ": " + what);
    }

    /** The fields of a mapping. */
    public Map<String, YamlNode> fields() {
        if (content instanceof Map<?, ?> map) {
            Map<String, YamlNode> typed = new LinkedHashMap<>();
            map.forEach((key, value) -> typed.put((String) key, (YamlNode) value));
            return typed;
        }
        throw complaint("expected fields, each as \"name: value\", but found " + found());
    }

    /** The items of a list. */
    public List<YamlNode> items() {
        if (content instanceof List<?> list) {
            List<YamlNode> typed = new ArrayList<>();
            list.forEach(item -> typed.add((YamlNode) item));
            return typed;
        }
        throw complaint("expected a list, but found " + found());
    }

    /** The text of a plain value. */
    public String text() {
        if (content instanceof String string) {
            return string;
        }
        throw complaint("expected a single value, but found " + found());
    }

    /** The value as a finite number. */
    public double number() {
        String text = text();
        double value;
        try {
            value = Double.parseDouble(text);
        } catch (NumberFormatException notANumber) {
            throw complaint("expected a number, but found \"" + text + "\"");
        }
        if (!Double.isFinite(value)) {
            throw complaint("expected a finite number, but found " + text);
        }
        return value;
    }

    /** The value as a whole number above 0. */
    public int positiveInteger() {
        double value = number();
        if (value < 1 || value != Math.rint(value) || value > Integer.MAX_VALUE) {
            throw complaint("expected a whole number above 0, but found " + text());
        }
        return (int) value;
    }

    /** A list of exactly two finite numbers. */
    public double[] pair() {
        List<YamlNode> items = items();
        if (items.size() != 2) {
            throw complaint("expected two numbers, as [1, 2], but found " + items.size());
        }
        return new double[] {items.get(0).number(), items.get(1).number()};
    }

    /** The field of this name, if it is there. */
    public Optional<YamlNode> field(String name) {
        return Optional.ofNullable(fields().get(name));
    }

    /** The field of this name. */
    public YamlNode required(String name) {
        return field(name).orElseThrow(() -> complaint("\"" + name + "\" is missing here"));
    }

    /** Complains about any field that is not one of these. */
    public void allowOnly(String... names) {
        for (Map.Entry<String, YamlNode> field : fields().entrySet()) {
            if (!List.of(names).contains(field.getKey())) {
                throw field.getValue()
                        .complaint("\"" + field.getKey() + "\" is not a field here; there are "
                                + String.join(", ", new TreeSet<>(List.of(names))));
            }
        }
    }

    private String found() {
        if (content instanceof Map) {
            return "fields";
        }
        return content instanceof List ? "a list" : "\"" + content + "\"";
    }
}
