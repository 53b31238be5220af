package floorgauge.app.sheet;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.drawing.Gauge;
import floorgauge.events.finding.Figure;
import java.util.List;

/** A finding's figures, each with what it was held against, and on its scale. */
public final class FigureTable {

    private static final List<String> HEADS = List.of("Part", "Figure", "Held against", "On its scale");

    private FigureTable() {}

    /** Nothing where there are no figures. */
    public static void write(Html html, List<Figure> figures) {
        if (figures.isEmpty()) {
            return;
        }
        html.open("table").element("caption", "Measured");
        html.open("thead").open("tr");
        HEADS.forEach(head -> html.element("th", "scope=\"col\"", head));
        html.close("tr").close("thead").open("tbody");
        figures.forEach(figure -> row(html, figure));
        html.close("tbody").close("table");
    }

    private static void row(Html html, Figure figure) {
        html.open("tr", FigureText.isBeyond(figure) ? "class=\"beyond\"" : "");
        html.element("th", "scope=\"row\"", figure.name());
        html.element("td", "class=\"figure\"", FigureText.of(figure));
        html.element("td", heldAgainst(figure));
        html.open("td").markup(Gauge.of(figure)).close("td").close("tr");
    }

    /** Such as {@code at least 60 of 100, missed}; blank where it is held against nothing. */
    public static String heldAgainst(Figure figure) {
        return figure.threshold()
                .map(t -> FigureText.of(t, figure.unit()) + (FigureText.isBeyond(figure) ? ", missed" : ", met"))
                .orElse("");
    }
}
