package floorgauge.app.result;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.floor.FloorPoint;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.KeyFrame;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Severity;
import floorgauge.events.finding.Threshold;
import floorgauge.events.finding.Tick;
import floorgauge.events.finding.Unit;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * One finding as JSON text, with the fields it has in {@code findings.json}, and back. Numbers keep four decimals on the
 * way.
 */
public final class FindingText {

    private static final JsonFactory FACTORY = new JsonFactory();
    private static final ObjectMapper JSON = new ObjectMapper();

    private FindingText() {}

    /** The finding on one line. */
    public static String write(Finding finding) {
        StringWriter text = new StringWriter();
        try (JsonGenerator generator = FACTORY.createGenerator(text)) {
            JsonFields json = new JsonFields(generator);
            json.object(() -> new FindingFields(json).write(finding));
        } catch (IOException e) {
            throw new UncheckedIOException("memory can always be written to", e);
        }
        return text.toString();
    }

    /** @throws IllegalArgumentException where the text is not a finding */
    public static Finding read(String text) {
        try {
            return read(JSON.readTree(text));
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("not a finding: " + e.getOriginalMessage(), e);
        }
    }

    /** @throws IllegalArgumentException where a field is missing or unknown */
    public static Finding read(JsonNode node) {
        return new Finding(
                kind(text(node, "kind")),
                text(node, "label"),
                number(node, "fromSeconds"),
                number(node, "toSeconds"),
                list(node, "roles", FindingText::role),
                list(node, "figures", FindingText::figure),
                number(node, "probability"),
                node.has("severity")
                        ? Optional.of(new Severity(
                                number(node.get("severity"), "level"),
                                figure(node.get("severity").path("cost"))))
                        : Optional.empty(),
                text(node, "sentence"),
                list(node, "frames", f -> new KeyFrame(number(f, "timeSeconds"), text(f, "caption"))),
                list(
                        node,
                        "ticks",
                        t -> new Tick(number(t, "timeSeconds"), number(t, "standardErrorSeconds"), text(t, "words"))),
                list(node, "marks", FindingText::mark),
                notSeen(node));
    }

    /** @throws IllegalArgumentException where no kind is written so */
    public static FindingKind kind(String words) {
        return Arrays.stream(FindingKind.values())
                .filter(k -> k.words().equals(words)
                        || k.name().toLowerCase(Locale.ROOT).replace('_', ' ').equals(words))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("unknown kind of finding: " + words));
    }

    /** @throws IllegalArgumentException where no role is written so */
    public static Role roleOf(String words) {
        return Arrays.stream(Role.values())
                .filter(r -> r.words().equals(words))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("unknown role: " + words));
    }

    static List<NotSeen> notSeen(JsonNode node) {
        return list(node, "notSeen", n -> new NotSeen(text(n, "what"), text(n, "why")));
    }

    static <T> List<T> list(JsonNode node, String field, Function<JsonNode, T> read) {
        List<T> values = new ArrayList<>();
        node.path(field).forEach(item -> values.add(read.apply(item)));
        return values;
    }

    static String text(JsonNode node, String field) {
        if (!node.path(field).isTextual()) {
            throw new IllegalArgumentException("expected text in '" + field + "'");
        }
        return node.get(field).asText();
    }

    static double number(JsonNode node, String field) {
        if (!node.path(field).isNumber()) {
            throw new IllegalArgumentException("expected a number in '" + field + "'");
        }
        return node.get(field).doubleValue();
    }

    static List<Integer> wholes(JsonNode node, String field) {
        return list(node, field, JsonNode::asInt);
    }

    private static RoleHolder role(JsonNode node) {
        return new RoleHolder(roleOf(text(node, "role")), (int) number(node, "playerId"));
    }

    private static Figure figure(JsonNode node) {
        String symbol = text(node, "unit");
        Unit unit = Arrays.stream(Unit.values())
                .filter(u -> u.symbol().equals(symbol))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("unknown unit: " + symbol));
        return new Figure(
                text(node, "name"),
                number(node, "value"),
                node.has("standardError") ? OptionalDouble.of(number(node, "standardError")) : OptionalDouble.empty(),
                unit,
                node.has("heldAgainst") ? Optional.of(threshold(node.get("heldAgainst"))) : Optional.empty());
    }

    private static Threshold threshold(JsonNode node) {
        boolean most = text(node, "sound").equals("at most");
        return new Threshold(
                text(node, "standard"), number(node, "value"), most ? Threshold.Side.AT_MOST : Threshold.Side.AT_LEAST);
    }

    private static Mark mark(JsonNode node) {
        Figure figure = figure(node.path("figure"));
        return switch (text(node, "draws")) {
            case "distance" ->
                new Mark.Distance(
                        number(node, "timeSeconds"),
                        (int) number(node, "fromPlayerId"),
                        (int) number(node, "toPlayerId"),
                        figure);
            case "distance to point" ->
                new Mark.DistanceToPoint(
                        number(node, "timeSeconds"),
                        (int) number(node, "fromPlayerId"),
                        new FloorPoint(number(node, "toXMetres"), number(node, "toYMetres")),
                        figure);
            case "path" ->
                new Mark.Path(
                        (int) number(node, "playerId"), number(node, "fromSeconds"), number(node, "toSeconds"), figure);
            case "area" -> new Mark.Area(number(node, "timeSeconds"), wholes(node, "playerIds"), figure);
            case "delay" -> new Mark.Delay(number(node, "fromSeconds"), number(node, "toSeconds"), figure);
            default -> throw new IllegalArgumentException("unknown mark: " + text(node, "draws"));
        };
    }
}
