package floorgauge.app.export;

import floorgauge.app.export.Table.Column;
import floorgauge.app.export.Table.Type;
import floorgauge.app.result.FilmSource;
import floorgauge.app.sheet.PlayerNames;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Threshold;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Findings as three tables: one row a finding, a role, a figure. Film and number of the finding join them. Times are
 * seconds of the film, other numbers in the unit that stands beside them.
 */
final class FindingTables {

    private static final List<Column> FINDING = List.of(
            new Column("film", Type.TEXT), new Column("film_sha256", Type.TEXT), new Column("finding", Type.WHOLE));

    private FindingTables() {}

    /** All three. */
    static List<Table> of(List<FilmChoice> films) {
        return List.of(findings(films), roles(films), figures(films));
    }

    private static Table findings(List<FilmChoice> films) {
        List<List<Object>> rows = new ArrayList<>();
        each(films, (film, names, chosen) -> {
            Finding finding = chosen.finding();
            rows.add(row(
                    film,
                    chosen,
                    (long) chosen.possession(),
                    finding.kind().words(),
                    finding.kind().isFlag(),
                    text(finding.label()),
                    number(finding.fromSeconds()),
                    number(finding.toSeconds()),
                    number(finding.probability()),
                    finding.severity().map(s -> number(s.level())).orElse(null),
                    finding.sentence()));
        });
        return table(
                "findings",
                rows,
                new Column("possession", Type.WHOLE),
                new Column("kind", Type.TEXT),
                new Column("flag", Type.TRUTH),
                new Column("label", Type.TEXT),
                new Column("from_s", Type.NUMBER),
                new Column("to_s", Type.NUMBER),
                new Column("probability", Type.NUMBER),
                new Column("severity", Type.NUMBER),
                new Column("sentence", Type.TEXT));
    }

    private static Table roles(List<FilmChoice> films) {
        List<List<Object>> rows = new ArrayList<>();
        each(films, (film, names, chosen) -> {
            for (RoleHolder holder : chosen.finding().roles()) {
                rows.add(row(
                        film,
                        chosen,
                        holder.role().words(),
                        (long) holder.trackId(),
                        names.nameOf(film.sha256(), holder.trackId()).orElse(null)));
            }
        });
        return table(
                "roles",
                rows,
                new Column("role", Type.TEXT),
                new Column("player_id", Type.WHOLE),
                new Column("player", Type.TEXT));
    }

    private static Table figures(List<FilmChoice> films) {
        List<List<Object>> rows = new ArrayList<>();
        each(films, (film, names, chosen) -> {
            for (Figure figure : chosen.finding().figures()) {
                Optional<Threshold> threshold = figure.threshold();
                rows.add(row(
                        film,
                        chosen,
                        figure.name(),
                        number(figure.value()),
                        figure.standardError().isPresent()
                                ? number(figure.standardError().getAsDouble())
                                : null,
                        text(figure.unit().symbol()),
                        threshold.map(Threshold::standard).orElse(null),
                        threshold.map(t -> number(t.value())).orElse(null),
                        threshold
                                .map(t -> t.sound()
                                        .name()
                                        .toLowerCase(Locale.ROOT)
                                        .replace('_', ' '))
                                .orElse(null)));
            }
        });
        return table(
                "figures",
                rows,
                new Column("figure", Type.TEXT),
                new Column("value", Type.NUMBER),
                new Column("standard_error", Type.NUMBER),
                new Column("unit", Type.TEXT),
                new Column("standard", Type.TEXT),
                new Column("held_against", Type.NUMBER),
                new Column("sound", Type.TEXT));
    }

    /** Takes each finding with its film. */
    @FunctionalInterface
    private interface Taker {
        void take(FilmSource film, PlayerNames names, ChosenFinding finding);
    }

    private static void each(List<FilmChoice> films, Taker taker) {
        for (FilmChoice film : films) {
            film.findings().forEach(f -> taker.take(film.film().findings().film(), film.names(), f));
        }
    }

    /** What is empty is not there: text files cannot tell the two apart. */
    private static String text(String text) {
        return text.isEmpty() ? null : text;
    }

    private static Double number(double value) {
        return Numbers.rounded(value).doubleValue();
    }

    /** A table whose first columns say which finding a row is about. */
    private static Table table(String name, List<List<Object>> rows, Column... own) {
        return new Table(
                name, Stream.concat(FINDING.stream(), Arrays.stream(own)).toList(), rows);
    }

    private static List<Object> row(FilmSource film, ChosenFinding chosen, Object... values) {
        List<Object> row = new ArrayList<>(List.of(film.name(), film.sha256(), (long) chosen.number()));
        row.addAll(Arrays.asList(values));
        return row;
    }
}
