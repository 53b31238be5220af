package floorgauge.app.review;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.regex.Pattern;

/** The keys as the analyst set them: whether they are on, and a key for each deed. */
final class KeySettings {

    private static final Pattern DEED = Pattern.compile("[a-z-]{1,30}");
    private static final int LONGEST_KEY = 20;
    private static final int MOST_KEYS = 60;

    private KeySettings() {}

    /** The settings as they are kept. @throws IllegalArgumentException where they are none */
    static String checked(JsonNode body) {
        ObjectNode kept = new ObjectMapper().createObjectNode();
        kept.put("on", body.path("on").asBoolean(true));
        ObjectNode keys = kept.putObject("keys");
        body.path("keys").properties().forEach(entry -> {
            String key = entry.getValue().asText();
            if (!DEED.matcher(entry.getKey()).matches() || key.length() > LONGEST_KEY || keys.size() > MOST_KEYS) {
                throw new IllegalArgumentException("these are no keys");
            }
            keys.put(entry.getKey(), key);
        });
        return kept.toString();
    }
}
