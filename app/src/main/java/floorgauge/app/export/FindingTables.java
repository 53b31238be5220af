package floorgauge.app.export;

import floorgauge.app.export.Table.Column;
import floorgauge.app.export.Table.Type;
import floorgauge.app.result.FilmSource;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Threshold;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Findings as three tables: one row a finding, a role, a figure. Film and number of the finding join them. Times are
 * seconds of the film, other numbers in the unit that stands beside them.
 */
final class FindingTables {

    private static final Column FILM = new Column("film", Type.TEXT);
    private static final Column SHA256 = new Column("film_sha256", Type.TEXT);
    private static final Column NUMBER = new Column("finding", Type.WHOLE);

    private FindingTables() {}

    /** All three. */
    static List<Table> of(List<FilmChoice> films) {
        return List.of(findings(films), roles(films), figures(films));
    }

    private static Table findings(List<FilmChoice> films) {
        List<List<Object>> rows = new ArrayList<>();
        each(films, (film, chosen) -> {
            Finding finding = chosen.finding();
            rows.add(row(
                    film.name(),
                    film.sha256(),
                    (long) chosen.number(),
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
        return new Table(
                "findings",
                List.of(
                        FILM,
                        SHA256,
                        NUMBER,
                        new Column("possession", Type.WHOLE),
                        new Column("kind", Type.TEXT),
                        new Column("flag", Type.TRUTH),
                        new Column("label", Type.TEXT),
                        new Column("from_s", Type.NUMBER),
                        new Column("to_s", Type.NUMBER),
                        new Column("probability", Type.NUMBER),
                        new Column("severity", Type.NUMBER),
                        new Column("sentence", Type.TEXT)),
                rows);
    }

    private static Table roles(List<FilmChoice> films) {
        List<List<Object>> rows = new ArrayList<>();
        each(films, (film, chosen) -> {
            for (RoleHolder holder : chosen.finding().roles()) {
                rows.add(row(
                        film.name(),
                        film.sha256(),
                        (long) chosen.number(),
                        holder.role().words(),
                        (long) holder.trackId()));
            }
        });
        return new Table(
                "roles",
                List.of(FILM, SHA256, NUMBER, new Column("role", Type.TEXT), new Column("player_id", Type.WHOLE)),
                rows);
    }

    private static Table figures(List<FilmChoice> films) {
        List<List<Object>> rows = new ArrayList<>();
        each(films, (film, chosen) -> {
            for (Figure figure : chosen.finding().figures()) {
                Optional<Threshold> threshold = figure.threshold();
                rows.add(row(
                        film.name(),
                        film.sha256(),
                        (long) chosen.number(),
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
        return new Table(
                "figures",
                List.of(
                        FILM,
                        SHA256,
                        NUMBER,
                        new Column("figure", Type.TEXT),
                        new Column("value", Type.NUMBER),
                        new Column("standard_error", Type.NUMBER),
                        new Column("unit", Type.TEXT),
                        new Column("standard", Type.TEXT),
                        new Column("held_against", Type.NUMBER),
                        new Column("sound", Type.TEXT)),
                rows);
    }

    /** Takes each finding with its film. */
    @FunctionalInterface
    private interface Taker {
        void take(FilmSource film, ChosenFinding finding);
    }

    private static void each(List<FilmChoice> films, Taker taker) {
        for (FilmChoice film : films) {
            film.findings().forEach(f -> taker.take(film.film().findings().film(), f));
        }
    }

    /** What is empty is not there: text files cannot tell the two apart. */
    private static String text(String text) {
        return text.isEmpty() ? null : text;
    }

    private static Double number(double value) {
        return Numbers.rounded(value).doubleValue();
    }

    private static List<Object> row(Object... values) {
        return Arrays.asList(values);
    }
}
