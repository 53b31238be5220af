package floorgauge.eval.score;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import floorgauge.eval.events.GradeAgreement;
import floorgauge.eval.events.ToleranceCurve;
import floorgauge.eval.statistics.Estimate;
import floorgauge.eval.statistics.PrecisionRecallCurve;
import floorgauge.eval.statistics.Reliability;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;

/** The whole report as JSON: the same report gives the same bytes. What is not defined is null. */
public final class ScoreJson {

    /** Name of the format. */
    public static final String FORMAT = "floorgauge-scores";

    /** Version of the format. */
    public static final int VERSION = 1;

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private ScoreJson() {}

    /** The text, ending in a line feed. */
    public static String of(ScoreReport report) {
        ObjectNode root = NODES.objectNode();
        root.put("format", FORMAT);
        root.put("version", VERSION);
        ArrayNode table = root.putArray("table");
        report.table().forEach(r -> table.add(row(r)));
        root.set("grades", grades(report.grades()));
        root.set("gradesOfSecondAnnotator", grades(report.gradeCeiling()));
        ArrayNode curves = root.putArray("curves");
        report.curves().forEach(c -> curves.add(curves(c)));
        ArrayNode breakdowns = root.putArray("breakdowns");
        report.breakdowns().forEach(b -> breakdowns.add(breakdown(b)));
        ArrayNode films = root.putArray("films");
        report.films().forEach(f -> films.add(film(f.sums())));
        ArrayNode errors = root.putArray("errors");
        report.errors().forEach(e -> errors.add(error(e)));
        return text(root);
    }

    static String text(ObjectNode root) {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
        printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
        try {
            return new ObjectMapper().writer(printer).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a report can always be written", e);
        }
    }

    static ObjectNode film(FilmSums film) {
        ObjectNode node = NODES.objectNode().put("film", film.film());
        ArrayNode sums = node.putArray("sums");
        for (Map.Entry<Measure, Sum> entry : film.sums().entrySet()) {
            ObjectNode sum = measure(entry.getKey());
            // Unrounded: a rounded sum would differ from the same sum measured again, in every film alike.
            sums.add(sum.put("part", entry.getValue().part())
                    .put("whole", entry.getValue().whole()));
        }
        return node;
    }

    static ObjectNode error(ErrorRow row) {
        ObjectNode node = NODES.objectNode().put("film", row.film());
        number(node, "timeSeconds", row.timeSeconds());
        return node.put("about", row.about())
                .put("problem", row.problem())
                .put("ids", row.ids())
                .put("expected", row.expected())
                .put("came", row.came())
                .put("link", row.link());
    }

    private static ObjectNode row(TableRow row) {
        ObjectNode node = measure(row.measure());
        node.set("result", estimate(Optional.of(row.result())));
        node.set("secondAnnotator", estimate(row.ceiling()));
        node.set("blindGuesser", estimate(row.floor()));
        return node;
    }

    private static ObjectNode measure(Measure measure) {
        return NODES.objectNode()
                .put("group", measure.group())
                .put("name", measure.name())
                .put("unit", measure.unit())
                .put("better", measure.better().name().toLowerCase(java.util.Locale.ROOT));
    }

    private static com.fasterxml.jackson.databind.JsonNode estimate(Optional<Estimate> estimate) {
        if (estimate.isEmpty()) {
            return NODES.nullNode();
        }
        ObjectNode node = NODES.objectNode();
        number(node, "value", estimate.get().value());
        number(node, "low", estimate.get().interval().low());
        number(node, "high", estimate.get().interval().high());
        number(node, "confidence", estimate.get().interval().confidence());
        return node.put("films", estimate.get().clips());
    }

    private static ObjectNode grades(GradeAgreement grades) {
        ObjectNode node = NODES.objectNode().put("graded", grades.graded());
        node.set("quadraticWeightedKappa", estimate(Optional.of(grades.kappa())));
        node.set("spearman", estimate(Optional.of(grades.spearman())));
        return node;
    }

    private static ObjectNode curves(KindCurves curves) {
        ObjectNode node = NODES.objectNode().put("kind", curves.kind().words());
        ArrayNode tolerance = node.putArray("tolerance");
        for (ToleranceCurve.Point point : curves.tolerance().points()) {
            ObjectNode p = tolerance.addObject();
            number(p, "seconds", point.seconds());
            number(p, "precision", point.precision());
            number(p, "recall", point.recall());
            number(p, "f1", point.f1());
        }
        number(node, "averagePrecision", curves.certainty().curve().averagePrecision());
        number(node, "falsePerHour", curves.certainty().falsePerHour());
        number(node, "brier", curves.certainty().reliability().brier());
        number(node, "calibrationError", curves.certainty().reliability().calibrationError());
        ArrayNode certainty = node.putArray("certainty");
        for (PrecisionRecallCurve.Point point : curves.certainty().curve().points()) {
            ObjectNode p = certainty.addObject();
            number(p, "threshold", point.threshold());
            number(p, "precision", point.precision());
            number(p, "recall", point.recall());
        }
        ArrayNode bins = node.putArray("reliability");
        for (Reliability.Bin bin : curves.certainty().reliability().bins()) {
            ObjectNode b = bins.addObject();
            number(b, "from", bin.from());
            number(b, "to", bin.to());
            b.put("count", bin.count());
            number(b, "meanProbability", bin.meanProbability());
            number(b, "realShare", bin.realShare());
        }
        return node;
    }

    private static ObjectNode breakdown(Breakdown breakdown) {
        ObjectNode node = measure(breakdown.measure());
        node.put("condition", breakdown.condition()).put("value", breakdown.value());
        node.set("result", estimate(Optional.of(breakdown.result())));
        return node;
    }

    private static void number(ObjectNode node, String name, double value) {
        if (Double.isFinite(value)) {
            node.put(name, new BigDecimal(Decimals.plain(value)));
        } else {
            node.putNull(name);
        }
    }
}
