package floorgauge.app.review;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.drawing.Gauge;
import floorgauge.app.sheet.FigureTable;
import floorgauge.app.sheet.Html;
import floorgauge.app.sheet.Phrases;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.Subject;
import floorgauge.app.store.Verdict;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import java.util.List;
import java.util.Optional;

/** A finding as it stands on a sheet: a sentence, its figures on their scales, and the verdict. */
final class FindingLines {

    private FindingLines() {}

    /** @param figures how many of its figures are shown; those held against a standard come first */
    static void write(Html html, StoredFinding found, Optional<Subject> judged, Names names, int figures) {
        Finding finding = found.finding();
        String state = judged.flatMap(Subject::verdict)
                .map(v -> " judged "
                        + v.answer().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'))
                .orElse("");
        html.open(
                "article",
                "class=\"finding" + (finding.kind().isFlag() ? " flag" : "") + state + "\" id=\"finding-"
                        + found.number() + "\" data-finding=\"" + found.id() + "\" tabindex=\"-1\" aria-labelledby=\"f"
                        + found.number() + "\"");
        html.open("h3", "id=\"f" + found.number() + "\"");
        html.element("span", "class=\"number\"", String.valueOf(found.number()));
        html.text(" " + Phrases.title(finding)).close("h3");
        html.open("p", "class=\"sentence\"").open("a", "href=\"/finding/" + found.id() + "\"");
        html.text(names.in(finding.sentence())).close("a").close("p");
        html.open("p", "class=\"aside\"").text(aside(finding)).close("p");
        figures(html, finding.figures(), figures);
        verdict(html, found.number(), judged);
        html.close("article");
    }

    static String aside(Finding finding) {
        return Phrases.joined(
                " · ",
                FigureText.time(finding.fromSeconds()) + " to " + FigureText.time(finding.toSeconds()),
                Phrases.sureness(finding),
                Words.cost(finding));
    }

    private static void figures(Html html, List<Figure> all, int most) {
        List<Figure> shown = all.stream()
                .sorted(java.util.Comparator.comparing(f -> f.threshold().isEmpty()))
                .limit(most)
                .toList();
        if (shown.isEmpty()) {
            return;
        }
        html.open("dl", "class=\"bars\"");
        for (Figure figure : shown) {
            boolean beyond = FigureText.isBeyond(figure);
            html.open("div", beyond ? "class=\"beyond\"" : "");
            html.element("dt", figure.name());
            html.open("dd").markup(Gauge.of(figure));
            html.open("span", "class=\"figure\"").text(FigureText.of(figure)).close("span");
            if (figure.threshold().isPresent()) {
                html.element("span", "class=\"standard\"", FigureTable.heldAgainst(figure));
            }
            html.close("dd").close("div");
        }
        html.close("dl");
    }

    /** The three answers, pressed where one was given. */
    static void verdict(Html html, int number, Optional<Subject> judged) {
        html.open("p", "class=\"verdict\"");
        html.open("span", "class=\"verdict-word\"").text("Verdict: ");
        html.element("b", "class=\"state\"", Words.verdict(judged));
        html.close("span");
        for (Verdict.Answer answer : Verdict.Answer.values()) {
            boolean given = judged.flatMap(Subject::verdict)
                    .filter(v -> v.answer() == answer)
                    .isPresent();
            html.open("button", "type=\"button\" data-answer=\"" + answer.name() + "\" aria-pressed=\"" + given + "\"");
            html.text(answer.words())
                    .open("span", "class=\"unheard\"")
                    .text(", finding " + number)
                    .close("span");
            html.close("button");
        }
        html.close("p");
    }
}
