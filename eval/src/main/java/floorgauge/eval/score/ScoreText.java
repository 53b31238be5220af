package floorgauge.eval.score;

import floorgauge.eval.statistics.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The score table as one screen of plain text. */
public final class ScoreText {

    private static final int MOST_ERRORS = 5;
    private static final List<String> ON_SCREEN = List.of(
            "precision", "recall", "F1", "false per hour", "HOTA", "DetA", "AssA", "MOTA", "IDF1", "floor error, mean");

    private ScoreText() {}

    /** The measures that matter most, the grades, and the first errors; the JSON and the page hold the rest. */
    public static String of(ScoreReport report) {
        List<String[]> lines = new ArrayList<>();
        lines.add(new String[] {"", "result", "90 % interval", "second annotator", "blind guesser"});
        String group = "";
        for (TableRow row : report.table()) {
            if (!ON_SCREEN.contains(row.measure().name())) {
                continue;
            }
            if (!row.measure().group().equals(group)) {
                group = row.measure().group();
                lines.add(new String[] {group, "", "", "", ""});
            }
            lines.add(new String[] {
                "  " + row.measure().name(),
                value(row.measure(), row.result()),
                interval(row.result()),
                value(row.measure(), row.ceiling()),
                value(row.measure(), row.floor())
            });
        }
        StringBuilder text = new StringBuilder();
        text.append(films(report.films().size())).append(" scored.\n\n");
        write(lines, text);
        grades(report, text);
        errors(report, text);
        return text.toString();
    }

    private static String films(int count) {
        return count == 1 ? "1 film" : count + " films";
    }

    private static void grades(ScoreReport report, StringBuilder text) {
        if (report.grades().graded() > 0) {
            text.append("\nScreen quality against ")
                    .append(report.grades().graded())
                    .append(" grades: quadratic weighted kappa ")
                    .append(withInterval(report.grades().kappa()))
                    .append(", rank correlation ")
                    .append(withInterval(report.grades().spearman()))
                    .append('\n');
        }
    }

    private static void errors(ScoreReport report, StringBuilder text) {
        List<ErrorRow> errors = report.errors();
        text.append('\n').append(errors.size()).append(errors.size() == 1 ? " error" : " errors");
        text.append(
                errors.size() > MOST_ERRORS ? "; the first " + MOST_ERRORS + ":\n" : errors.isEmpty() ? ".\n" : ":\n");
        errors.stream()
                .limit(MOST_ERRORS)
                .forEach(e -> text.append("  ")
                        .append(e.film())
                        .append(' ')
                        .append(Decimals.of(e.timeSeconds(), 2))
                        .append(" s  ")
                        .append(e.about())
                        .append(", ")
                        .append(e.problem())
                        .append(": expected ")
                        .append(e.expected())
                        .append(", came ")
                        .append(e.came())
                        .append("  ")
                        .append(e.link())
                        .append('\n'));
    }

    static String value(Measure measure, Estimate estimate) {
        String number = Decimals.of(estimate.value(), 3);
        return measure.unit().isEmpty() || Double.isNaN(estimate.value()) ? number : number + " " + measure.unit();
    }

    static String value(Measure measure, Optional<Estimate> estimate) {
        return estimate.map(e -> value(measure, e)).orElse("-");
    }

    static String interval(Estimate estimate) {
        return estimate.interval().known()
                ? Decimals.of(estimate.interval().low(), 3) + " to "
                        + Decimals.of(estimate.interval().high(), 3)
                : "-";
    }

    static String withInterval(Estimate estimate) {
        return Decimals.of(estimate.value(), 2)
                + (estimate.interval().known()
                        ? " (" + Decimals.of(estimate.interval().low(), 2) + " to "
                                + Decimals.of(estimate.interval().high(), 2) + ")"
                        : "");
    }

    private static void write(List<String[]> lines, StringBuilder text) {
        int[] widths = new int[lines.get(0).length];
        for (String[] line : lines) {
            for (int i = 0; i < line.length; i++) {
                widths[i] = Math.max(widths[i], line[i].length());
            }
        }
        for (String[] line : lines) {
            StringBuilder row = new StringBuilder();
            for (int i = 0; i < line.length; i++) {
                String pad = " ".repeat(widths[i] - line[i].length());
                row.append(i == 0 ? line[i] + pad : "  " + pad + line[i]);
            }
            text.append(row.toString().stripTrailing()).append('\n');
        }
    }
}
