package floorgauge.app.sheet;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.drawing.FrameDrawing;
import floorgauge.app.drawing.PlanOfFloor;
import floorgauge.app.drawing.TimeRule;
import floorgauge.app.result.CourtReading;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.RoleHolder;
import java.util.List;
import java.util.stream.Collectors;

/** One finding on a sheet: the sentence, the frames, the time rule, the plan, the parts, what was not seen. */
final class FindingArticle {

    private final Html html;
    private final PlanOfFloor plan;
    private final CourtReading court;

    FindingArticle(Html html, PlanOfFloor plan, CourtReading court) {
        this.html = html;
        this.plan = plan;
        this.court = court;
    }

    void write(Finding finding, int number, List<ShownFrame> frames) {
        boolean flag = finding.kind().isFlag();
        html.open("article", "id=\"finding-" + number + "\" class=\"finding" + (flag ? " flag" : "") + "\"");
        html.open("h3")
                .open("span", "class=\"number\"")
                .text(String.valueOf(number))
                .close("span");
        html.text(" " + Phrases.title(finding)).close("h3");
        html.element("p", "class=\"sentence\"", finding.sentence());
        html.element("p", "class=\"aside\"", aside(finding));
        strip(finding, frames);
        if (!finding.ticks().isEmpty()) {
            html.open("figure", "class=\"rule\"").markup(TimeRule.of(finding)).close("figure");
        }
        html.open("div", "class=\"evidence\"");
        html.open("figure", "class=\"finding-plan\"").markup(plan.of(finding));
        html.element("figcaption", "The floor at " + FigureText.time(PlanOfFloor.decisiveMoment(finding)));
        html.close("figure");
        parts(finding);
        html.close("div");
        html.close("article");
    }

    private static String aside(Finding finding) {
        return Phrases.joined(
                " · ",
                FigureText.time(finding.fromSeconds()) + " to " + FigureText.time(finding.toSeconds()),
                finding.roles().stream().map(FindingArticle::role).collect(Collectors.joining(", ")),
                Phrases.sureness(finding),
                finding.severity().map(s -> "cost " + FigureText.of(s.cost())).orElse(""));
    }

    private static String role(RoleHolder holder) {
        return holder.role().words() + " #" + holder.trackId();
    }

    private void strip(Finding finding, List<ShownFrame> frames) {
        if (frames.isEmpty()) {
            return;
        }
        html.open("div", "class=\"strip\"");
        for (ShownFrame frame : frames) {
            html.open("figure");
            html.markup(new FrameDrawing(finding, frame.frame(), frame.crop(), court.floorToPixel())
                    .draw(frame.dataAddress(), frame.key().caption()));
            html.open("figcaption")
                    .element("b", FigureText.time(frame.key().timeSeconds()))
                    .text(" " + frame.key().caption());
            html.close("figcaption").close("figure");
        }
        html.close("div");
    }

    private void parts(Finding finding) {
        html.open("div", "class=\"parts\"");
        FigureTable.write(html, finding.figures());
        NotSeenList.write(html, finding.notSeen(), "Not seen");
        html.close("div");
    }
}
