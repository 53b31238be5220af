package floorgauge.app.sheet;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.drawing.PlanOfFloor;
import floorgauge.app.result.Cautions;
import floorgauge.events.diagram.PlayerLabels;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** What pages for the wall have in common: the head, the drawn findings, the foot. One sheet of paper each. */
final class WallPage {

    private static final List<String> STYLES = List.of("sheet.css", "wall.css");

    private final Html html = new Html();
    private final PlayerNames names;

    WallPage(PlayerNames names) {
        this.names = names;
    }

    Html html() {
        return html;
    }

    void begin(String kicker, String title, String lede) {
        html.markup("<!DOCTYPE html>\n");
        html.open("html", "lang=\"en\"").open("head");
        html.markup("<meta charset=\"utf-8\">\n");
        html.markup("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.element("title", title);
        html.open("style");
        STYLES.forEach(style -> html.markup(resource(style)));
        html.close("style").close("head").open("body", "class=\"wall\"");
        html.markup(Hatching.DEFINITION);
        html.open("main").open("header");
        html.element("p", "class=\"kicker\"", kicker).element("h1", title);
        html.element("p", "class=\"lede\"", lede);
        html.close("header");
    }

    /** Findings side by side, each with its sentence, its plan and where to find it on film. */
    void findings(String title, List<WallFinding> findings) {
        if (findings.isEmpty()) {
            return;
        }
        html.open("section").element("h2", title);
        html.open("div", "class=\"wall-findings\"");
        for (WallFinding wall : findings) {
            html.open("article", wall.finding().kind().isFlag() ? "class=\"flag\"" : "");
            html.element("h3", kind(wall));
            html.element(
                    "p", "class=\"sentence\"", named(wall.film(), wall.finding().sentence()));
            html.open("figure", "class=\"finding-plan\"");
            html.markup(
                    new PlanOfFloor(wall.film().rules(), wall.possession(), labels(wall.film())).of(wall.finding()));
            html.element("figcaption", where(wall)).close("figure");
            html.close("article");
        }
        html.close("div").close("section");
    }

    String finish() {
        html.close("main").open("footer", "class=\"small\"");
        html.element("p", String.join(" ", Cautions.TEXT));
        html.close("footer").close("body").close("html");
        return html.finish();
    }

    /** The sentence with names in the place of track numbers, where they are known. */
    private String named(WallFilm film, String sentence) {
        return names.in(film.film().sha256(), sentence);
    }

    /** In marks a track that nobody was said to be is told from a jersey number by its sign. */
    private PlayerLabels labels(WallFilm film) {
        return track -> names.markOf(film.film().sha256(), track).orElse("#" + track);
    }

    private static String kind(WallFinding wall) {
        return Phrases.joined(", ", Phrases.title(wall.finding()), Phrases.sureness(wall.finding()));
    }

    private static String where(WallFinding wall) {
        return wall.film().film().name() + ", " + FigureText.time(wall.finding().fromSeconds()) + ", finding "
                + wall.number();
    }

    private static String resource(String name) {
        try (InputStream in = WallPage.class.getResourceAsStream("/floorgauge/app/sheet/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + name, e);
        }
    }
}
