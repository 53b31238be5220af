package floorgauge.sampleclips.input;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads JSON. Numbers and booleans keep the text they are written with; null is refused, since a value may be left out. */
public final class LocatedJson {

    private final String file;
    private final JsonParser parser;

    private LocatedJson(String file, JsonParser parser) {
        this.file = file;
        this.parser = parser;
    }

    /**
     * @param file its name, for messages
     * @param text the JSON
     * @throws InputException where the text is no JSON, or names a field twice
     */
    public static LocatedValue parse(String file, String text) {
        try (JsonParser parser = new JsonFactory().createParser(text)) {
            LocatedJson reader = new LocatedJson(file, parser);
            if (parser.nextToken() == null) {
                throw new InputException(file, 1, "the file is empty");
            }
            LocatedValue root = reader.value("");
            if (parser.nextToken() != null) {
                throw new InputException(file, reader.line(), "expected one JSON value, found more after it");
            }
            return root;
        } catch (JsonProcessingException e) {
            int line = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
            throw new InputException(file, Math.max(1, line), "not JSON: " + e.getOriginalMessage());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private int line() {
        return parser.currentTokenLocation().getLineNr();
    }

    private LocatedValue value(String path) throws IOException {
        int line = line();
        JsonToken token = parser.currentToken();
        if (token == JsonToken.START_OBJECT) {
            return new LocatedValue(file, line, path, fields(path));
        }
        if (token == JsonToken.START_ARRAY) {
            List<LocatedValue> items = new ArrayList<>();
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                items.add(value(path + "[" + items.size() + "]"));
            }
            return new LocatedValue(file, line, path, items);
        }
        if (token == JsonToken.VALUE_NULL) {
            throw new LocatedValue(file, line, path, "")
                    .error("expected a value, found null; leave the field out instead");
        }
        return new LocatedValue(file, line, path, parser.getText());
    }

    private Map<String, LocatedValue> fields(String path) throws IOException {
        Map<String, LocatedValue> fields = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            parser.nextToken();
            LocatedValue field = value(path.isEmpty() ? name : path + "." + name);
            if (fields.put(name, field) != null) {
                throw field.error("stands twice");
            }
        }
        return fields;
    }
}
