package floorgauge.app.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import floorgauge.app.result.FindingText;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.SpacingSample;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;

/** The JSON text of structured columns. */
final class StoreJson {

    static final ObjectMapper JSON = new ObjectMapper();

    private StoreJson() {}

    static JsonNode read(String text) {
        try {
            return JSON.readTree(text);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the store holds a damaged value: " + e.getOriginalMessage(), e);
        }
    }

    static String write(Object value) {
        try {
            return JSON.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("values of the store can always be written", e);
        }
    }

    static List<Integer> wholes(String text) {
        List<Integer> list = new ArrayList<>();
        read(text).forEach(n -> list.add(n.asInt()));
        return list;
    }

    static String roles(List<RoleHolder> roles) {
        ArrayNode array = JSON.createArrayNode();
        roles.forEach(r -> array.addObject().put("role", r.role().words()).put("track", r.trackId()));
        return array.toString();
    }

    static List<RoleHolder> roles(String text) {
        List<RoleHolder> roles = new ArrayList<>();
        read(text)
                .forEach(n -> roles.add(new RoleHolder(
                        FindingText.roleOf(n.path("role").asText()),
                        n.path("track").asInt())));
        return roles;
    }

    static String notSeen(List<NotSeen> list) {
        ArrayNode array = JSON.createArrayNode();
        list.forEach(n -> array.addObject().put("what", n.what()).put("why", n.why()));
        return array.toString();
    }

    static List<NotSeen> notSeen(String text) {
        List<NotSeen> list = new ArrayList<>();
        read(text)
                .forEach(n -> list.add(
                        new NotSeen(n.path("what").asText(), n.path("why").asText())));
        return list;
    }

    static String places(Map<Integer, List<TimedPlace>> places) {
        ObjectNode root = JSON.createObjectNode();
        places.forEach((track, list) -> {
            ArrayNode array = root.putArray(String.valueOf(track));
            list.forEach(p -> array.addArray()
                    .add(rounded(p.seconds()))
                    .add(rounded(p.x()))
                    .add(rounded(p.y())));
        });
        return root.toString();
    }

    static Map<Integer, List<TimedPlace>> places(String text) {
        Map<Integer, List<TimedPlace>> places = new java.util.TreeMap<>();
        read(text).properties().forEach(e -> {
            List<TimedPlace> list = new ArrayList<>();
            e.getValue()
                    .forEach(p -> list.add(new TimedPlace(
                            p.path(0).asDouble(),
                            p.path(1).asDouble(),
                            p.path(2).asDouble())));
            places.put(Integer.valueOf(e.getKey()), list);
        });
        return places;
    }

    static String spacing(List<SpacingSample> samples) {
        ArrayNode rows = JSON.createArrayNode();
        for (SpacingSample s : samples) {
            ArrayNode row = rows.addArray();
            row.add(rounded(s.timeSeconds())).add(s.attackers());
            number(row, s.leastNearestMetres());
            number(row, s.leastNearestStandardErrorMetres());
            number(row, s.meanNearestMetres());
            row.add(rounded(s.hullSquareMetres())).add(s.inLane()).add(s.cornersFilled());
            number(row, s.drivingLaneMetres());
            number(row, s.helpDistanceMetres());
            row.add(s.duringAction() ? 1 : 0);
        }
        return rows.toString();
    }

    static List<SpacingSample> spacing(String text) {
        List<SpacingSample> samples = new ArrayList<>();
        for (JsonNode row : read(text)) {
            Function<Integer, OptionalDouble> at =
                    i -> row.path(i).isNumber() ? OptionalDouble.of(row.get(i).doubleValue()) : OptionalDouble.empty();
            samples.add(new SpacingSample(
                    row.path(0).asDouble(),
                    row.path(1).asInt(),
                    at.apply(2),
                    at.apply(3),
                    at.apply(4),
                    row.path(5).asDouble(),
                    row.path(6).asInt(),
                    row.path(7).asInt(),
                    at.apply(8),
                    at.apply(9),
                    row.path(10).asInt() != 0));
        }
        return samples;
    }

    private static void number(ArrayNode row, OptionalDouble value) {
        if (value.isPresent()) {
            row.add(rounded(value.getAsDouble()));
        } else {
            row.addNull();
        }
    }

    /** To a millimetre or a millisecond. */
    private static double rounded(double value) {
        return Math.round(value * 1000) / 1000.0;
    }
}
