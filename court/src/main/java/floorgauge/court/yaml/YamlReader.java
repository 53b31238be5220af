package floorgauge.court.yaml;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Builds {@link YamlNode}s token by token, because only the tokens know their lines. */
final class YamlReader {

    private static final YAMLFactory FACTORY = new YAMLFactory();

    private final Path file;
    private final JsonParser parser;

    private YamlReader(Path file, JsonParser parser) {
        this.file = file;
        this.parser = parser;
    }

    static YamlNode read(Path file) {
        try (JsonParser parser = FACTORY.createParser(Files.readString(file, StandardCharsets.UTF_8))) {
            if (parser.nextToken() == null) {
                throw new MendableException(file + " is empty");
            }
            return new YamlReader(file, parser).node();
        } catch (NoSuchFileException missing) {
            throw new MendableException(file + " does not exist", missing);
        } catch (JsonProcessingException broken) {
            int line = broken.getLocation() == null ? 1 : broken.getLocation().getLineNr();
            String why = broken.getOriginalMessage().lines().findFirst().orElse("unreadable");
            throw new MendableException(file + ", line " + line + ": not readable as YAML: " + why, broken);
        } catch (IOException unreadable) {
            throw new MendableException(file + " cannot be read: " + unreadable.getMessage(), unreadable);
        }
    }

    private YamlNode node() throws IOException {
        int line = parser.currentTokenLocation().getLineNr();
        if (parser.currentToken() == JsonToken.START_OBJECT) {
            return new YamlNode(file, line, mapping());
        }
        if (parser.currentToken() == JsonToken.START_ARRAY) {
            List<YamlNode> items = new ArrayList<>();
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                items.add(node());
            }
            return new YamlNode(file, line, items);
        }
        return new YamlNode(file, line, parser.getText());
    }

    private Map<String, YamlNode> mapping() throws IOException {
        Map<String, YamlNode> fields = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            parser.nextToken();
            YamlNode value = node();
            if (fields.putIfAbsent(name, value) != null) {
                throw value.complaint("\"" + name + "\" stands here twice");
            }
        }
        return fields;
    }
}
