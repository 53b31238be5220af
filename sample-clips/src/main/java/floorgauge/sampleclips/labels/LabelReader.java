package floorgauge.sampleclips.labels;

import floorgauge.court.failure.MendableException;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Unit;
import floorgauge.sampleclips.input.LocatedJson;
import floorgauge.sampleclips.input.LocatedValue;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** Reads a label file; every error names file, line, field and what was expected. */
public final class LabelReader {

    /** The one time base of the format. */
    static final String TIME_BASE = "film presentation time, seconds";

    private static final double LONGEST_FILM_SECONDS = 24 * 3600;
    private static final double LARGEST_FIGURE = 1e6;
    private static final List<String> FIELDS = List.of(
            "schemaVersion",
            "film",
            "scene",
            "timeBase",
            "annotator",
            "guidelineVersion",
            "rules",
            "end",
            "people",
            "possessions",
            "events",
            "unclear");
    private static final List<String> EVENT_FIELDS = List.of(
            "id", "kind", "label", "from", "at", "to", "roles", "figures", "words", "grade", "cantTell", "note");

    private final Set<Integer> people = new HashSet<>();
    private final Set<String> eventIds = new HashSet<>();

    private LabelReader() {}

    /** @throws MendableException where the file can't be read or is not a label file */
    public static FilmLabels read(Path file) {
        try {
            return read(file.toString(), Files.readString(file));
        } catch (IOException e) {
            throw new MendableException(file + ": can't be read as text: " + e.getMessage(), e);
        }
    }

    /**
     * @param file its name, for messages
     * @param text the JSON
     * @throws floorgauge.sampleclips.input.InputException where the text is not a label file
     */
    public static FilmLabels read(String file, String text) {
        return new LabelReader().labels(LocatedJson.parse(file, text));
    }

    private FilmLabels labels(LocatedValue root) {
        root.fields(FIELDS);
        LocatedValue version = root.required("schemaVersion");
        if (version.wholeNumber(1, 1_000_000) != FilmLabels.SCHEMA_VERSION) {
            throw version.error("expected version " + FilmLabels.SCHEMA_VERSION + ", found " + version.text());
        }
        LocatedValue timeBase = root.required("timeBase");
        if (!timeBase.text().equals(TIME_BASE)) {
            throw timeBase.error("expected '" + TIME_BASE + "', found '" + timeBase.text() + "'");
        }
        Optional<FilmReference> film = root.optional("film").map(LabelReader::film);
        Optional<SceneReference> scene = root.optional("scene").map(LabelReader::scene);
        if (film.isEmpty() && scene.isEmpty()) {
            throw root.error("field 'film' is missing");
        }
        List<LabelledPerson> persons =
                root.required("people").items().stream().map(this::person).toList();
        return new FilmLabels(
                film,
                scene,
                nonBlank(root.required("annotator")),
                root.required("guidelineVersion").wholeNumber(1, 1_000_000),
                rules(root.required("rules")),
                root.optional("end").map(LabelReader::end),
                persons,
                root.required("possessions").items().stream()
                        .map(this::possession)
                        .toList(),
                root.required("events").items().stream().map(this::event).toList(),
                root.optional("unclear").map(LocatedValue::items).orElse(List.of()).stream()
                        .map(LabelReader::unclear)
                        .toList());
    }

    private static FilmReference film(LocatedValue value) {
        value.fields(List.of("file", "sha256"));
        LocatedValue hash = value.required("sha256");
        if (!hash.text().matches("[0-9a-f]{64}")) {
            throw hash.error("expected 64 lower-case hexadecimal digits, found '" + hash.text() + "'");
        }
        return new FilmReference(nonBlank(value.required("file")), hash.text());
    }

    private static SceneReference scene(LocatedValue value) {
        value.fields(List.of("name", "seed"));
        LocatedValue seed = value.required("seed");
        try {
            return new SceneReference(nonBlank(value.required("name")), Long.parseLong(seed.text()));
        } catch (NumberFormatException e) {
            throw seed.error("expected a whole number, found '" + seed.text() + "'");
        }
    }

    private static String nonBlank(LocatedValue value) {
        if (value.text().isBlank()) {
            throw value.error("expected a word, found nothing");
        }
        return value.text();
    }

    private static String rules(LocatedValue value) {
        return RuleSet.named(value.text()).map(RuleSet::name).orElseGet(() -> nonBlank(value));
    }

    private static CourtEnd end(LocatedValue value) {
        return switch (value.text()) {
            case "positive" -> CourtEnd.POSITIVE_X;
            case "negative" -> CourtEnd.NEGATIVE_X;
            default -> throw value.error("expected positive or negative, found '" + value.text() + "'");
        };
    }

    private LabelledPerson person(LocatedValue value) {
        value.fields(List.of("id", "side", "number", "name"));
        LocatedValue id = value.required("id");
        LocatedValue side = value.required("side");
        int number = id.wholeNumber(1, 1_000_000);
        if (!people.add(number)) {
            throw id.error("expected an id of its own, " + number + " stands already");
        }
        return new LabelledPerson(
                number,
                Arrays.stream(LabelledPerson.Side.values())
                        .filter(s -> s.name().toLowerCase(Locale.ROOT).equals(side.text()))
                        .findFirst()
                        .orElseThrow(
                                () -> side.error("expected attack, defence or other, found '" + side.text() + "'")),
                value.optional("number")
                        .map(n -> OptionalInt.of(n.wholeNumber(0, 99)))
                        .orElse(OptionalInt.empty()),
                value.optional("name").map(LocatedValue::text));
    }

    private int known(LocatedValue value) {
        int id = value.wholeNumber(1, 1_000_000);
        if (!people.contains(id)) {
            throw value.error("expected the id of someone under 'people', found " + id);
        }
        return id;
    }

    private LabelledPossession possession(LocatedValue value) {
        value.fields(List.of("from", "to", "attackers", "defenders", "outcome"));
        LocatedValue outcome = value.required("outcome");
        if (!LabelledPossession.OUTCOMES.contains(outcome.text())) {
            throw outcome.error("expected one of " + String.join(", ", LabelledPossession.OUTCOMES) + ", found '"
                    + outcome.text() + "'");
        }
        return new LabelledPossession(
                from(value),
                to(value),
                value.required("attackers").items().stream().map(this::known).toList(),
                value.required("defenders").items().stream().map(this::known).toList(),
                outcome.text());
    }

    private static UnclearSpan unclear(LocatedValue value) {
        value.fields(List.of("from", "to", "why"));
        return new UnclearSpan(from(value), to(value), nonBlank(value.required("why")));
    }

    private static double from(LocatedValue value) {
        return value.required("from").number(0, LONGEST_FILM_SECONDS);
    }

    private static double to(LocatedValue value) {
        return value.required("to").number(from(value), LONGEST_FILM_SECONDS);
    }

    private LabelledEvent event(LocatedValue value) {
        value.fields(EVENT_FIELDS);
        LocatedValue id = value.required("id");
        if (!eventIds.add(nonBlank(id))) {
            throw id.error("expected an id of its own, '" + id.text() + "' stands already");
        }
        SortedMap<String, String> words = new TreeMap<>();
        value.optional("words").ifPresent(w -> w.fields().forEach((name, word) -> words.put(name, word.text())));
        return new LabelledEvent(
                id.text(),
                kind(value.required("kind")),
                value.optional("label").map(LabelReader::nonBlank),
                from(value),
                value.optional("at")
                        .map(a -> OptionalDouble.of(a.number(from(value), to(value))))
                        .orElse(OptionalDouble.empty()),
                to(value),
                value.required("roles").items().stream().map(this::role).toList(),
                list(value, "figures").stream().map(LabelReader::figure).toList(),
                words,
                value.optional("grade")
                        .map(g -> OptionalInt.of(g.wholeNumber(1, 5)))
                        .orElse(OptionalInt.empty()),
                list(value, "cantTell").stream().map(LabelReader::nonBlank).toList(),
                value.optional("note").map(LocatedValue::text));
    }

    private static List<LocatedValue> list(LocatedValue value, String name) {
        return value.optional(name).map(LocatedValue::items).orElse(new ArrayList<>());
    }

    private static FindingKind kind(LocatedValue value) {
        return Arrays.stream(FindingKind.values())
                .filter(k -> k.words().equals(value.text()))
                .findFirst()
                .orElseThrow(() -> value.error("unknown kind '" + value.text() + "'; expected one of "
                        + String.join(
                                ", ",
                                Arrays.stream(FindingKind.values())
                                        .map(FindingKind::words)
                                        .toList())));
    }

    private RoleHolder role(LocatedValue value) {
        value.fields(List.of("role", "person"));
        LocatedValue word = value.required("role");
        Role role = Arrays.stream(Role.values())
                .filter(r -> r.words().equals(word.text()))
                .findFirst()
                .orElseThrow(() -> word.error("unknown role '" + word.text() + "'; expected one of "
                        + String.join(
                                ", ",
                                Arrays.stream(Role.values()).map(Role::words).toList())));
        return new RoleHolder(role, known(value.required("person")));
    }

    private static LabelledFigure figure(LocatedValue value) {
        value.fields(List.of("name", "value", "unit"));
        LocatedValue name = value.required("name");
        Unit unit = FigureNames.all().get(name.text());
        if (unit == null) {
            throw name.error("unknown figure '" + name.text() + "'; expected one of "
                    + String.join(", ", FigureNames.all().keySet()));
        }
        LocatedValue symbol = value.required("unit");
        if (!symbol.text().equals(unit.symbol())) {
            throw symbol.error("expected '" + unit.symbol() + "', found '" + symbol.text() + "'");
        }
        return new LabelledFigure(name.text(), value.required("value").number(-LARGEST_FIGURE, LARGEST_FIGURE), unit);
    }
}
