package floorgauge.eval.score;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.eval.events.EventMark;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Reads what {@code floorgauge measure} wrote: {@code findings.json} and {@code tracks.mot.txt} of each film. */
public final class ResultsReader {

    private static final String FINDINGS = "findings.json";
    private static final String TRACKS = "tracks.mot.txt";
    private static final String FORMAT = "floorgauge-findings";
    private static final int VERSION = 1;
    private static final Set<String> DECISIVE = Set.of("screen", "release");
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Path file;

    private ResultsReader(Path file) {
        this.file = file;
    }

    /**
     * @param place a results folder with a folder for each film, or one film's folder
     * @return in order of folder name
     * @throws ScoreException where there is none, or one is not as expected
     */
    public static List<FilmResults> read(Path place) {
        if (Files.isRegularFile(place.resolve(FINDINGS))) {
            return List.of(film(place, ""));
        }
        if (!Files.isDirectory(place)) {
            throw new ScoreException(place, "results", "expected a results folder, found nothing there");
        }
        List<FilmResults> films = new ArrayList<>();
        try (Stream<Path> list = Files.list(place)) {
            List<Path> folders = list.filter(f -> !f.getFileName().toString().startsWith("."))
                    .filter(f -> Files.isRegularFile(f.resolve(FINDINGS)))
                    .sorted()
                    .toList();
            folders.forEach(f -> films.add(film(f, f.getFileName().toString())));
        } catch (IOException e) {
            throw new ScoreException(place, "results", "cannot be read: " + e.getMessage(), e);
        }
        if (films.isEmpty()) {
            throw new ScoreException(place, "results", "expected a folder with " + FINDINGS + ", found none");
        }
        return films;
    }

    private static FilmResults film(Path folder, String name) {
        Path tracks = folder.resolve(TRACKS);
        Optional<MotChallengeFile> read =
                Files.isRegularFile(tracks) ? Optional.of(MotChallengeFile.read(tracks)) : Optional.empty();
        return new ResultsReader(folder.resolve(FINDINGS)).film(name, read);
    }

    private FilmResults film(String folder, Optional<MotChallengeFile> tracks) {
        JsonNode root = root();
        if (!FORMAT.equals(root.path("format").asText())) {
            throw new ScoreException(file, "format", "expected " + FORMAT);
        }
        if (root.path("version").asInt() != VERSION) {
            throw new ScoreException(
                    file,
                    "version",
                    "expected " + VERSION + ", found " + root.path("version").asText());
        }
        JsonNode film = root.path("film");
        SortedMap<String, String> conditions = new TreeMap<>();
        conditions.put("rules", root.path("court").path("rules").asText());
        conditions.put("court status", root.path("court").path("status").asText());
        conditions.put("camera", root.path("court").path("camera").asText("not told"));
        conditions.put("court source", root.path("court").path("source").asText());
        return new FilmResults(
                text(film, "film", "name"),
                text(film, "film", "sha256"),
                folder,
                positive(film, "film", "durationSeconds"),
                (long) positive(film, "film", "frames"),
                possessions(root.path("possessions")),
                findings(root.path("possessions")),
                tracks,
                conditions);
    }

    private JsonNode root() {
        try {
            return JSON.readTree(file.toFile());
        } catch (JsonProcessingException e) {
            throw new ScoreException(
                    file, "line " + e.getLocation().getLineNr(), "expected JSON: " + e.getOriginalMessage(), e);
        } catch (IOException e) {
            throw new ScoreException(file, "file", "cannot be read: " + e.getMessage(), e);
        }
    }

    private List<PossessionSpan> possessions(JsonNode possessions) {
        List<PossessionSpan> spans = new ArrayList<>();
        for (JsonNode possession : possessions) {
            String where = "possession " + (spans.size() + 1);
            spans.add(new PossessionSpan(
                    (int) number(possession, where, "number"),
                    number(possession, where, "fromSeconds"),
                    number(possession, where, "toSeconds")));
        }
        return spans;
    }

    private List<EventMark> findings(JsonNode possessions) {
        List<EventMark> marks = new ArrayList<>();
        for (JsonNode possession : possessions) {
            for (JsonNode finding : possession.path("findings")) {
                marks.add(mark(finding, "finding-" + (marks.size() + 1)));
            }
        }
        return marks;
    }

    private EventMark mark(JsonNode finding, String id) {
        double from = number(finding, id, "fromSeconds");
        double moment = from;
        for (JsonNode tick : finding.path("ticks")) {
            if (DECISIVE.contains(tick.path("words").asText())) {
                moment = number(tick, id + ", ticks", "timeSeconds");
                break;
            }
        }
        String label = finding.path("label").asText();
        return new EventMark(
                id,
                kind(finding, id),
                label.isBlank() ? Optional.empty() : Optional.of(label),
                moment,
                from,
                number(finding, id, "toSeconds"),
                roles(finding.path("roles"), id),
                figures(finding.path("figures"), id),
                number(finding, id, "probability"),
                OptionalInt.empty(),
                Set.of());
    }

    private FindingKind kind(JsonNode finding, String id) {
        String word = finding.path("kind").asText();
        return Arrays.stream(FindingKind.values())
                .filter(k -> sameWord(k.name(), word) || k.words().equals(word))
                .findFirst()
                .orElseThrow(() -> new ScoreException(
                        file, id + ", kind", "expected a known kind of finding, found '" + word + "'"));
    }

    private static boolean sameWord(String constant, String word) {
        return constant.equalsIgnoreCase(word.replace(' ', '_'));
    }

    private SortedMap<Role, SortedSet<Integer>> roles(JsonNode holders, String id) {
        SortedMap<Role, SortedSet<Integer>> roles = new TreeMap<>();
        for (JsonNode holder : holders) {
            String word = holder.path("role").asText();
            Role role = Arrays.stream(Role.values())
                    .filter(r -> r.words().equals(word))
                    .findFirst()
                    .orElseThrow(() ->
                            new ScoreException(file, id + ", roles", "expected a known role, found '" + word + "'"));
            roles.computeIfAbsent(role, r -> new TreeSet<>()).add((int) number(holder, id + ", roles", "playerId"));
        }
        return roles;
    }

    private SortedMap<String, Double> figures(JsonNode list, String id) {
        SortedMap<String, Double> figures = new TreeMap<>();
        for (JsonNode figure : list) {
            figures.putIfAbsent(text(figure, id + ", figures", "name"), number(figure, id + ", figures", "value"));
        }
        return figures;
    }

    private String text(JsonNode node, String where, String field) {
        if (!node.path(field).isTextual()) {
            throw new ScoreException(file, where + ", " + field, "expected text");
        }
        return node.path(field).asText();
    }

    private double number(JsonNode node, String where, String field) {
        if (!node.path(field).isNumber()) {
            throw new ScoreException(file, where + ", " + field, "expected a number");
        }
        return node.path(field).doubleValue();
    }

    private double positive(JsonNode node, String where, String field) {
        double value = number(node, where, field);
        if (!(value > 0)) {
            throw new ScoreException(file, where + ", " + field, "expected a number above 0, found " + value);
        }
        return value;
    }
}
