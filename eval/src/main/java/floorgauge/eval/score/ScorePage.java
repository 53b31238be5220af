package floorgauge.eval.score;

import static floorgauge.eval.score.Plot.escape;

import floorgauge.eval.events.ToleranceCurve;
import floorgauge.eval.statistics.PrecisionRecallCurve;
import floorgauge.eval.statistics.Reliability;
import java.util.ArrayList;
import java.util.List;

/** The report as one self-contained page: a sentence, the table, plots, breakdowns, and every error as a row with its link. */
public final class ScorePage {

    private static final String STYLE = ":root{--paper:#fff;--ink:#1a1a1a;--accent:#b3261e}"
            + "@media(prefers-color-scheme:dark){:root{--paper:#161616;--ink:#eee;--accent:#ff8a80}}"
            + "body{background:var(--paper);color:var(--ink);font:15px/1.45 system-ui,sans-serif;margin:2rem auto;"
            + "max-width:64rem;padding:0 1rem;font-variant-numeric:tabular-nums}"
            + "table{border-collapse:collapse;width:100%;margin:1rem 0}"
            + "th,td{text-align:right;padding:.15rem .5rem;border-bottom:1px solid color-mix(in srgb,var(--ink) 20%,"
            + "transparent);vertical-align:top}th:first-child,td:first-child,.words td,.words th{text-align:left}"
            + "tr.group th{padding-top:.8rem;border-bottom:1px solid var(--ink)}"
            + ".plots{display:flex;flex-wrap:wrap;gap:1rem}.plot{width:15rem;height:auto}"
            + ".plot text{font-size:9px;fill:var(--ink)}.plot polyline{fill:none;stroke:var(--ink);stroke-width:1.4}"
            + ".plot .axis{stroke-width:.6}.plot .dashed{stroke-dasharray:4 3}.plot .faint{stroke-width:.5;"
            + "stroke-dasharray:1 3}.plot .mark{fill:var(--paper);stroke:var(--ink)}a{color:inherit}"
            + "@media print{body{margin:0;max-width:none}}";

    private final ScoreReport report;
    private final String results;
    private final StringBuilder html = new StringBuilder();

    private ScorePage(ScoreReport report, String results) {
        this.report = report;
        this.results = results;
    }

    /**
     * The page's text.
     *
     * @param results address of the results folder relative to the page: empty text where the page lies in it, else ending
     *     in a slash
     */
    public static String of(ScoreReport report, String results) {
        return new ScorePage(report, results).page();
    }

    private String page() {
        html.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Scores</title>")
                .append("<meta name=\"viewport\" content=\"width=device-width\"><style>")
                .append(STYLE)
                .append("</style></head>\n<body><h1>How far to trust these findings</h1>\n<p>")
                .append(escape(opening()))
                .append("</p>\n");
        table();
        grades();
        plots();
        breakdowns();
        errors();
        return html.append("</body></html>\n").toString();
    }

    private String opening() {
        int films = report.films().size();
        String text = (films == 1 ? "1 film was" : films + " films were") + " scored against labels. ";
        return text
                + "Intervals hold the true value 9 times in 10; they come from drawing films anew, so with few films they are "
                + "wide or missing. The second annotator is the most that can be asked; the blind guesser, who knows how many "
                + "events there are and never looks at the film, is the least.";
    }

    private void table() {
        html.append("<table><thead><tr><th scope=\"col\">Measure</th><th scope=\"col\">Result</th>")
                .append("<th scope=\"col\">90 % interval</th><th scope=\"col\">Second annotator</th>")
                .append("<th scope=\"col\">Blind guesser</th></tr></thead><tbody>\n");
        String group = "";
        for (TableRow row : report.table()) {
            if (!row.measure().group().equals(group)) {
                group = row.measure().group();
                html.append("<tr class=\"group\"><th scope=\"rowgroup\" colspan=\"5\">")
                        .append(escape(group))
                        .append("</th></tr>\n");
            }
            cells(List.of(
                    row.measure().name(),
                    ScoreText.value(row.measure(), row.result()),
                    ScoreText.interval(row.result()),
                    ScoreText.value(row.measure(), row.ceiling()),
                    ScoreText.value(row.measure(), row.floor())));
        }
        html.append("</tbody></table>\n");
    }

    private void grades() {
        if (report.grades().graded() > 0) {
            html.append("<p>Screen quality against ")
                    .append(report.grades().graded())
                    .append(" grades of a coach: quadratic weighted kappa ")
                    .append(ScoreText.withInterval(report.grades().kappa()))
                    .append(", rank correlation ")
                    .append(ScoreText.withInterval(report.grades().spearman()))
                    .append(".</p>\n");
        }
    }

    private void plots() {
        for (KindCurves curves : report.curves()) {
            html.append("<h2>")
                    .append(escape(curves.kind().words()))
                    .append("</h2>\n<div class=\"plots\">")
                    .append(tolerance(curves))
                    .append(certainty(curves))
                    .append(reliability(curves))
                    .append("</div>\n");
        }
    }

    private static String tolerance(KindCurves curves) {
        List<double[]> recall = new ArrayList<>();
        List<double[]> precision = new ArrayList<>();
        for (ToleranceCurve.Point point : curves.tolerance().points()) {
            recall.add(new double[] {point.seconds(), point.recall()});
            precision.add(new double[] {point.seconds(), point.precision()});
        }
        ToleranceCurve.Point last =
                curves.tolerance().points().get(curves.tolerance().points().size() - 1);
        return new Plot(
                        last.seconds(),
                        "tolerance, s: recall solid, precision dashed",
                        "",
                        "Recall " + Decimals.of(last.recall(), 2) + " and precision " + Decimals.of(last.precision(), 2)
                                + " within " + Decimals.of(last.seconds(), 1) + " s")
                .curve(recall, "solid")
                .curve(precision, "dashed")
                .finish();
    }

    private static String certainty(KindCurves curves) {
        List<double[]> points = new ArrayList<>();
        for (PrecisionRecallCurve.Point point : curves.certainty().curve().points()) {
            points.add(new double[] {point.recall(), point.precision()});
        }
        return new Plot(
                        1,
                        "recall; precision upwards",
                        "",
                        "Average precision "
                                + Decimals.of(curves.certainty().curve().averagePrecision(), 2))
                .curve(points, "solid")
                .finish();
    }

    private static String reliability(KindCurves curves) {
        Plot plot = new Plot(
                        1,
                        "stated certainty; share that was real upwards",
                        "",
                        "Calibration error "
                                + Decimals.of(curves.certainty().reliability().calibrationError(), 2))
                .line(0, 0, 1, 1, "faint");
        for (Reliability.Bin bin : curves.certainty().reliability().bins()) {
            if (bin.count() > 0) {
                plot.line(
                        bin.meanProbability(),
                        bin.interval().low(),
                        bin.meanProbability(),
                        bin.interval().high(),
                        "solid");
                plot.mark(bin.meanProbability(), bin.realShare());
            }
        }
        return plot.finish();
    }

    private void breakdowns() {
        if (report.breakdowns().isEmpty()) {
            return;
        }
        html.append("<h2>By condition</h2>\n<table class=\"words\"><thead><tr>")
                .append("<th scope=\"col\">Condition</th><th scope=\"col\">Value</th><th scope=\"col\">Measure</th>")
                .append("<th scope=\"col\">Result</th><th scope=\"col\">90 % interval</th><th scope=\"col\">Films</th>")
                .append("</tr></thead><tbody>\n");
        for (Breakdown row : report.breakdowns()) {
            cells(List.of(
                    row.condition(),
                    row.value(),
                    row.measure().key(),
                    ScoreText.value(row.measure(), row.result()),
                    ScoreText.interval(row.result()),
                    String.valueOf(row.result().clips())));
        }
        html.append("</tbody></table>\n");
    }

    private void errors() {
        List<ErrorRow> errors = report.errors();
        html.append("<h2>")
                .append(errors.size())
                .append(errors.size() == 1 ? " error" : " errors")
                .append("</h2>\n<table class=\"words\"><thead><tr>");
        for (String head : List.of("Film", "Time", "About", "Problem", "Ids", "Expected", "Came")) {
            html.append("<th scope=\"col\">").append(head).append("</th>");
        }
        html.append("</tr></thead><tbody>\n");
        for (ErrorRow row : errors) {
            html.append("<tr><td>")
                    .append(escape(row.film()))
                    .append("</td><td><a href=\"")
                    .append(escape(results + row.link()))
                    .append("\">")
                    .append(Decimals.of(row.timeSeconds(), 2))
                    .append(" s</a></td>");
            for (String cell : List.of(row.about(), row.problem(), row.ids(), row.expected(), row.came())) {
                html.append("<td>").append(escape(cell)).append("</td>");
            }
            html.append("</tr>\n");
        }
        html.append("</tbody></table>\n");
    }

    private void cells(List<String> cells) {
        html.append("<tr>");
        for (String cell : cells) {
            html.append("<td>").append(escape(cell)).append("</td>");
        }
        html.append("</tr>\n");
    }
}
