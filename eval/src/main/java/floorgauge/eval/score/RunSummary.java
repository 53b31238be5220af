package floorgauge.eval.score;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What is kept of a run to compare another with: each film's sums and the error rows. Read from the JSON of a score report,
 * or from a baseline, which is the same file with nothing else in it.
 *
 * @param films sums by film
 * @param errors all error rows
 */
public record RunSummary(List<FilmSums> films, List<ErrorRow> errors) {

    public RunSummary {
        films = List.copyOf(films);
        errors = List.copyOf(errors);
    }

    /** What a report says. */
    public static RunSummary of(ScoreReport report) {
        return new RunSummary(report.films().stream().map(FilmScore::sums).toList(), report.errors());
    }

    /** The baseline's text, a line for each film and error; {@link #read} takes it back. */
    public String json() {
        return "{\"format\":\"" + ScoreJson.FORMAT + "\",\"version\":" + ScoreJson.VERSION + ",\n\"films\":[\n"
                + lines(films.stream().map(ScoreJson::film))
                + "\n],\n\"errors\":[\n"
                + lines(errors.stream().map(ScoreJson::error))
                + "\n]}\n";
    }

    private static String lines(Stream<ObjectNode> nodes) {
        return nodes.map(ObjectNode::toString).collect(Collectors.joining(",\n"));
    }

    /** @throws ScoreException where the file is not a score file of this version */
    public static RunSummary read(Path file) {
        JsonNode root;
        try {
            root = new ObjectMapper().readTree(Files.readString(file));
        } catch (JsonProcessingException e) {
            throw new ScoreException(
                    file, "line " + e.getLocation().getLineNr(), "expected JSON: " + e.getOriginalMessage(), e);
        } catch (IOException e) {
            throw new ScoreException(file, "file", "cannot be read: " + e.getMessage(), e);
        }
        if (!ScoreJson.FORMAT.equals(root.path("format").asText())) {
            throw new ScoreException(file, "format", "expected " + ScoreJson.FORMAT);
        }
        if (root.path("version").asInt() != ScoreJson.VERSION) {
            throw new ScoreException(file, "version", "expected " + ScoreJson.VERSION);
        }
        List<FilmSums> films = new ArrayList<>();
        root.path("films").forEach(f -> films.add(film(f)));
        List<ErrorRow> errors = new ArrayList<>();
        root.path("errors").forEach(e -> errors.add(error(e)));
        return new RunSummary(films, errors);
    }

    private static FilmSums film(JsonNode node) {
        SortedMap<Measure, Sum> sums = new TreeMap<>();
        for (JsonNode sum : node.path("sums")) {
            Measure measure = new Measure(
                    sum.path("group").asText(),
                    sum.path("name").asText(),
                    sum.path("unit").asText(),
                    Measure.Better.valueOf(sum.path("better").asText().toUpperCase(java.util.Locale.ROOT)));
            sums.put(
                    measure,
                    new Sum(sum.path("part").asDouble(), sum.path("whole").asDouble()));
        }
        return new FilmSums(node.path("film").asText(), sums);
    }

    private static ErrorRow error(JsonNode node) {
        return new ErrorRow(
                node.path("film").asText(),
                node.path("timeSeconds").asDouble(),
                node.path("about").asText(),
                node.path("problem").asText(),
                node.path("ids").asText(),
                node.path("expected").asText(),
                node.path("came").asText(),
                node.path("link").asText());
    }
}
