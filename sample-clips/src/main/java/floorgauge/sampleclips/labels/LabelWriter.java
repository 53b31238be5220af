package floorgauge.sampleclips.labels;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;

/** Writes labels: the same labels give the same bytes; times and figures with four decimals. */
public final class LabelWriter {

    private static final int DECIMALS = 4;
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private LabelWriter() {}

    /** Writes beside the file and moves it there. */
    public static void write(FilmLabels labels, Path file) throws IOException {
        Path beside = file.resolveSibling(file.getFileName() + ".part");
        Files.writeString(beside, text(labels));
        Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    }

    /** The JSON text, ending in a line feed. */
    public static String text(FilmLabels labels) {
        ObjectNode root = NODES.objectNode();
        root.put("schemaVersion", FilmLabels.SCHEMA_VERSION);
        labels.film()
                .ifPresent(f -> root.putObject("film").put("file", f.file()).put("sha256", f.sha256()));
        labels.scene()
                .ifPresent(s -> root.putObject("scene").put("name", s.name()).put("seed", s.seed()));
        root.put("timeBase", LabelReader.TIME_BASE);
        root.put("annotator", labels.annotator());
        root.put("guidelineVersion", labels.guidelineVersion());
        root.put("rules", labels.rules());
        labels.end().ifPresent(e -> root.put("end", e.sign() > 0 ? "positive" : "negative"));
        ArrayNode people = root.putArray("people");
        labels.people().forEach(p -> people.add(person(p)));
        ArrayNode possessions = root.putArray("possessions");
        labels.possessions().forEach(p -> possessions.add(possession(p)));
        ArrayNode events = root.putArray("events");
        labels.events().forEach(e -> events.add(event(e)));
        ArrayNode unclear = root.putArray("unclear");
        labels.unclear()
                .forEach(u -> unclear.add(span(u.fromSeconds(), u.toSeconds()).put("why", u.why())));
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
        printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
        try {
            return new ObjectMapper().writer(printer).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("labels can always be written", e);
        }
    }

    private static ObjectNode person(LabelledPerson person) {
        ObjectNode node = NODES.objectNode();
        node.put("id", person.id());
        node.put("side", person.side().name().toLowerCase(Locale.ROOT));
        person.number().ifPresent(n -> node.put("number", n));
        person.name().ifPresent(n -> node.put("name", n));
        return node;
    }

    private static ObjectNode possession(LabelledPossession possession) {
        ObjectNode node = span(possession.fromSeconds(), possession.toSeconds());
        ids(node.putArray("attackers"), possession.attackers());
        ids(node.putArray("defenders"), possession.defenders());
        return node.put("outcome", possession.outcome());
    }

    private static void ids(ArrayNode array, List<Integer> ids) {
        ids.forEach(array::add);
    }

    private static ObjectNode event(LabelledEvent event) {
        ObjectNode node = NODES.objectNode();
        node.put("id", event.id());
        node.put("kind", event.kind().words());
        event.label().ifPresent(l -> node.put("label", l));
        node.put("from", rounded(event.fromSeconds()));
        event.atSeconds().ifPresent(a -> node.put("at", rounded(a)));
        node.put("to", rounded(event.toSeconds()));
        ArrayNode roles = node.putArray("roles");
        event.roles()
                .forEach(r -> roles.addObject().put("role", r.role().words()).put("person", r.trackId()));
        ArrayNode figures = node.putArray("figures");
        event.figures()
                .forEach(f -> figures.addObject()
                        .put("name", f.name())
                        .put("value", rounded(f.value()))
                        .put("unit", f.unit().symbol()));
        ObjectNode words = node.putObject("words");
        event.words().forEach(words::put);
        event.grade().ifPresent(g -> node.put("grade", g));
        ArrayNode cantTell = node.putArray("cantTell");
        event.cantTell().forEach(cantTell::add);
        event.note().ifPresent(n -> node.put("note", n));
        return node;
    }

    private static ObjectNode span(double from, double to) {
        return NODES.objectNode().put("from", rounded(from)).put("to", rounded(to));
    }

    private static BigDecimal rounded(double value) {
        BigDecimal exact = BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
        return exact.signum() == 0 ? BigDecimal.ZERO.setScale(1) : plain(exact.stripTrailingZeros());
    }

    private static BigDecimal plain(BigDecimal value) {
        return value.scale() < 1 ? value.setScale(1) : value;
    }
}
