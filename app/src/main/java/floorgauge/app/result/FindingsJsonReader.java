package floorgauge.app.result;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Appearance;
import floorgauge.court.track.JerseyReading;
import floorgauge.court.track.Team;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.SpacingSample;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.regex.Pattern;

/** Reads {@code findings.json} back. */
public final class FindingsJsonReader {

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Pattern COLOUR = Pattern.compile("#[0-9a-f]{6}");

    private FindingsJsonReader() {}

    /** @throws MendableException where the file is missing, of another version, or not as {@link FindingsJson} writes it */
    public static FindingsDocument read(Path file) {
        try {
            return document(JSON.readTree(file.toFile()));
        } catch (JsonProcessingException e) {
            throw new MendableException(
                    file + ", line " + e.getLocation().getLineNr() + ": not JSON; measure the film again", e);
        } catch (IOException e) {
            throw new MendableException(file + " cannot be read: " + e.getMessage() + "; measure the film again", e);
        } catch (IllegalArgumentException e) {
            throw new MendableException(file + ": " + e.getMessage() + "; measure the film again", e);
        }
    }

    private static FindingsDocument document(JsonNode root) {
        if (!FindingsJson.FORMAT.equals(root.path("format").asText())) {
            throw new IllegalArgumentException("not a file of findings");
        }
        if (root.path("version").asInt() != FindingsJson.VERSION) {
            throw new IllegalArgumentException(
                    "version " + root.path("version").asText() + " of the format, expected " + FindingsJson.VERSION);
        }
        Map<String, String> settings = new TreeMap<>();
        root.path("settings")
                .properties()
                .forEach(f -> settings.put(f.getKey(), f.getValue().asText()));
        return new FindingsDocument(
                FindingText.text(root, "run"),
                film(root.path("film")),
                RunSettings.of(settings),
                court(root.path("court")),
                FindingText.list(root, "players", FindingsJsonReader::player),
                new Findings(
                        FindingText.list(root, "possessions", FindingsJsonReader::possession),
                        FindingText.notSeen(root)));
    }

    private static FilmSource film(JsonNode node) {
        return new FilmSource(
                FindingText.text(node, "name"),
                FindingText.text(node, "sha256"),
                (int) FindingText.number(node, "widthPixels"),
                (int) FindingText.number(node, "heightPixels"),
                FindingText.number(node, "durationSeconds"),
                (long) FindingText.number(node, "frames"));
    }

    private static CourtReading court(JsonNode node) {
        String rules = FindingText.text(node, "rules");
        return new CourtReading(
                RuleSet.named(rules)
                        .orElseThrow(() -> new IllegalArgumentException("unknown rule set '" + rules + "'")),
                FindingText.text(node, "source"),
                FindingText.text(node, "status"),
                FindingText.text(node, "reason"),
                node.path("camera").asText("none"),
                FindingText.list(node, "pixelToFloor", JsonNode::doubleValue),
                (FloorPoint point) -> Optional.empty());
    }

    private static FindingsDocument.PlayerSpan player(JsonNode node) {
        return new FindingsDocument.PlayerSpan(
                (int) FindingText.number(node, "id"),
                constant(Team.class, FindingText.text(node, "team")),
                FindingText.number(node, "teamProbability"),
                FindingText.number(node, "fromSeconds"),
                FindingText.number(node, "toSeconds"),
                appearance(node));
    }

    private static Appearance appearance(JsonNode node) {
        return new Appearance(
                node.has("jerseyNumber")
                        ? Optional.of(new JerseyReading(
                                (int) FindingText.number(node, "jerseyNumber"),
                                FindingText.number(node, "jerseyProbability")))
                        : Optional.empty(),
                node.has("shirt") ? OptionalInt.of(rgb(FindingText.text(node, "shirt"))) : OptionalInt.empty());
    }

    private static int rgb(String text) {
        if (!COLOUR.matcher(text).matches()) {
            throw new IllegalArgumentException("expected a colour such as #1a2b3c in 'shirt'");
        }
        return Integer.parseInt(text.substring(1), 16);
    }

    private static PossessionFindings possession(JsonNode node) {
        Possession possession = new Possession(
                (int) FindingText.number(node, "number"),
                FindingText.number(node, "fromSeconds"),
                FindingText.number(node, "toSeconds"),
                constant(Team.class, FindingText.text(node, "attack")),
                FindingText.number(node, "attackProbability"),
                constant(CourtEnd.class, FindingText.text(node, "end")),
                FindingText.wholes(node, "attackers"),
                FindingText.wholes(node, "defenders"),
                node.path("ballSeen").asBoolean(),
                FindingText.text(node, "outcome"));
        return new PossessionFindings(
                possession,
                FindingText.list(node, "findings", FindingText::read),
                spacing(node.path("spacing")),
                List.of(),
                FindingText.notSeen(node));
    }

    private static List<SpacingSample> spacing(JsonNode columns) {
        int samples = columns.path("timeSeconds").size();
        List<SpacingSample> list = new ArrayList<>(samples);
        for (int i = 0; i < samples; i++) {
            list.add(new SpacingSample(
                    columns.get("timeSeconds").get(i).doubleValue(),
                    whole(columns, "attackers", i),
                    value(columns, "leastNearestMetres", i),
                    value(columns, "leastNearestStandardErrorMetres", i),
                    value(columns, "meanNearestMetres", i),
                    value(columns, "hullSquareMetres", i).orElse(0),
                    whole(columns, "inLane", i),
                    whole(columns, "cornersFilled", i),
                    value(columns, "drivingLaneMetres", i),
                    value(columns, "helpDistanceMetres", i),
                    whole(columns, "duringAction", i) != 0));
        }
        return list;
    }

    private static int whole(JsonNode columns, String name, int row) {
        return (int) value(columns, name, row).orElse(0);
    }

    private static OptionalDouble value(JsonNode columns, String name, int row) {
        JsonNode value = columns.path(name).path(row);
        return value.isNumber() ? OptionalDouble.of(value.doubleValue()) : OptionalDouble.empty();
    }

    private static <E extends Enum<E>> E constant(Class<E> type, String words) {
        return Enum.valueOf(type, words.toUpperCase(Locale.ROOT).replace(' ', '_'));
    }
}
