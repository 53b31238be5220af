package floorgauge.eval.score;

import floorgauge.eval.statistics.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The table and the error rows as comma-separated text (RFC 4180): commas, quotes doubled, lines end in CR LF. */
public final class ScoreCsv {

    private ScoreCsv() {}

    /** One line for each measure. */
    public static String table(ScoreReport report) {
        String head = line(List.of(
                "group", "measure", "unit", "result", "low", "high", "films", "second annotator", "blind guesser"));
        return head + report.table().stream().map(ScoreCsv::row).collect(Collectors.joining());
    }

    /** One line for each error. */
    public static String errors(ScoreReport report) {
        String head = line(List.of("film", "seconds", "about", "problem", "ids", "expected", "came", "link"));
        return head
                + report.errors().stream()
                        .map(e -> line(List.of(
                                e.film(),
                                Decimals.plain(e.timeSeconds()),
                                e.about(),
                                e.problem(),
                                e.ids(),
                                e.expected(),
                                e.came(),
                                e.link())))
                        .collect(Collectors.joining());
    }

    private static String row(TableRow row) {
        return line(List.of(
                row.measure().group(),
                row.measure().name(),
                row.measure().unit(),
                Decimals.plain(row.result().value()),
                Decimals.plain(row.result().interval().low()),
                Decimals.plain(row.result().interval().high()),
                String.valueOf(row.result().clips()),
                value(row.ceiling()),
                value(row.floor())));
    }

    private static String value(Optional<Estimate> estimate) {
        return estimate.map(e -> Decimals.plain(e.value())).orElse("");
    }

    private static String line(List<String> fields) {
        return fields.stream().map(ScoreCsv::quoted).collect(Collectors.joining(",")) + "\r\n";
    }

    /** Quoted where need be; a leading =, +, - or @ would be run as a formula by a spreadsheet, so it gets an apostrophe. */
    private static String quoted(String field) {
        boolean formula = !field.isEmpty() && "=+-@".indexOf(field.charAt(0)) >= 0 && !isNumber(field);
        String safe = formula ? "'" + field : field;
        boolean plain = Stream.of(",", "\"", "\n", "\r").noneMatch(safe::contains);
        return plain ? safe : "\"" + safe.replace("\"", "\"\"") + "\"";
    }

    private static boolean isNumber(String field) {
        return field.matches("-?[0-9.]+");
    }
}
