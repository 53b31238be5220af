package floorgauge.sampleclips.input;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A value in a text file that knows its file, line and path, so that each error can name them. Immutable. */
public final class LocatedValue {

    private final String file;
    private final int line;
    private final String path;
    private final Object content;

    /** @param content a String, a List of LocatedValue or a Map of String to LocatedValue */
    LocatedValue(String file, int line, String path, Object content) {
        this.file = file;
        this.line = line;
        this.path = path;
        this.content = content;
    }

    /** Line of the file, from 1. */
    public int line() {
        return line;
    }

    /** An exception that names this value's place. */
    public InputException error(String what) {
        return new InputException(file, line, path.isEmpty() ? what : path + ": " + what);
    }

    /** Fields by name, in the order of the file. */
    public Map<String, LocatedValue> fields() {
        if (!(content instanceof Map<?, ?> map)) {
            throw error("expected fields (name: value)");
        }
        Map<String, LocatedValue> fields = new LinkedHashMap<>();
        map.forEach((name, value) -> fields.put((String) name, (LocatedValue) value));
        return fields;
    }

    /** Refuses fields that nobody reads. */
    public Map<String, LocatedValue> fields(Collection<String> known) {
        Map<String, LocatedValue> fields = fields();
        fields.forEach((name, field) -> {
            if (!known.contains(name)) {
                throw field.error("unknown field; expected one of " + String.join(", ", known));
            }
        });
        return fields;
    }

    public LocatedValue required(String name) {
        LocatedValue field = fields().get(name);
        if (field == null) {
            throw error("field '" + name + "' is missing");
        }
        return field;
    }

    public Optional<LocatedValue> optional(String name) {
        return Optional.ofNullable(fields().get(name));
    }

    public List<LocatedValue> items() {
        if (!(content instanceof List<?> list)) {
            throw error("expected a list");
        }
        return list.stream().map(LocatedValue.class::cast).toList();
    }

    public boolean isList() {
        return content instanceof List;
    }

    public String text() {
        if (!(content instanceof String text)) {
            throw error("expected a word");
        }
        return text;
    }

    /** A number within bounds, both allowed. */
    public double number(double least, double most) {
        String expected = "expected a number from " + plain(least) + " to " + plain(most);
        String text = content instanceof String s ? s : "";
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

    /** A whole number within bounds, both allowed. */
    public int wholeNumber(int least, int most) {
        double value = number(least, most);
        if (value != Math.rint(value)) {
            throw error("expected a whole number, found " + value);
        }
        return (int) value;
    }

    private static String plain(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? Long.toString((long) value)
                : Double.toString(value);
    }
}
