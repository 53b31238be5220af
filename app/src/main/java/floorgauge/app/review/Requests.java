package floorgauge.app.review;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;

/** Reads what requests ask, and answers them in JSON. */
final class Requests {

    private static final ObjectMapper JSON = new ObjectMapper();

    private Requests() {}

    static Guard.Refused missing() {
        return new Guard.Refused(404, "there is no such page");
    }

    static String query(Context request, String name) {
        return Optional.ofNullable(request.queryParam(name)).orElse("");
    }

    static double number(Context request, String name) {
        try {
            return Double.parseDouble(query(request, name));
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(name + " is a number of seconds", e);
        }
    }

    static LocalDate day(Context request) {
        try {
            return LocalDate.parse(query(request, "day"));
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("day is a date such as 2026-11-20", e);
        }
    }

    static JsonNode body(Context request) {
        try {
            JsonNode node = JSON.readTree(request.body());
            if (node == null || !node.isObject()) {
                throw new IllegalArgumentException("expected a JSON object");
            }
            return node;
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("the request is not JSON", e);
        }
    }

    static ObjectNode object() {
        return JSON.createObjectNode();
    }

    /** Answers with the sentence that is said of what was done. */
    static void done(Context request, String said) {
        json(request, object().put("said", said).toString());
    }

    static void json(Context request, String text) {
        request.contentType("application/json; charset=utf-8").result(text);
    }
}
