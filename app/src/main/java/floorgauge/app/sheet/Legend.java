package floorgauge.app.sheet;

import floorgauge.app.drawing.DimensionLine;
import floorgauge.app.drawing.Svg;

/** How to read the drawings. */
public final class Legend {

    private static final double WIDTH = 110;
    private static final double HEIGHT = 34;

    private Legend() {}

    public static void write(Html html) {
        html.open("section", "class=\"legend\"").element("h2", "Reading the drawings");
        html.open("ul");
        Svg attacker = picture();
        attacker.circle(55, 17, 8, "attacker-mark").text(55, 20.6, "middle", "player-number", "4");
        attacker.line(4, 28, 46, 20, "trail attacker certain");
        item(html, attacker, "An attacker's number in a circle; the way is drawn through");
        Svg defender = picture();
        defender.line(50.5, 12.5, 59.5, 21.5, "defender-mark").line(50.5, 21.5, 59.5, 12.5, "defender-mark");
        defender.text(61, 27, "start", "player-number", "9").line(4, 28, 46, 20, "trail defender certain");
        item(html, defender, "A defender's cross with its number; the way is dotted");
        Svg certainty = picture();
        certainty.line(6, 8, 104, 8, "trail attacker certain");
        certainty.line(6, 17, 104, 17, "trail attacker fair").line(6, 26, 104, 26, "trail attacker doubtful");
        item(html, certainty, "Known within 0.2 m, within 0.5 m, and less well");
        Svg dimension = picture();
        new DimensionLine(20, 28, 90, 28, 10, "1.42 ± 0.08 m", false, WIDTH).draw(dimension);
        item(html, dimension, "A measured distance, with one standard error");
        Svg beyond = picture();
        new DimensionLine(20, 28, 90, 28, 10, "0.62 ± 0.08 m", true, WIDTH).draw(beyond);
        item(html, beyond, "The same beyond its threshold");
        Svg unseen = picture();
        unseen.rectangle(20, 4, 70, 26, "unseen");
        item(html, unseen, "Not seen");
        html.close("ul").close("section");
    }

    private static Svg picture() {
        return new Svg(0, 0, WIDTH, HEIGHT, "plan key", "");
    }

    private static void item(Html html, Svg picture, String words) {
        html.open("li").markup(picture.finish()).element("span", words).close("li");
    }
}
