package floorgauge.app.review;

import floorgauge.app.sheet.Hatching;
import floorgauge.app.sheet.Html;
import java.util.List;

/** What every page has: its head, the way to the other pages, and its end. */
final class Frame {

    /** A page with its address and its name in the line at the top. */
    private record Place(String address, String name) {}

    private static final List<Place> PLACES = List.of(
            new Place("/", "Morning sheet"),
            new Place("/practices", "Practices"),
            new Place("/players", "Players"),
            new Place("/trends", "Trends"),
            new Place("/keys", "Keys"));

    private Frame() {}

    /**
     * Opens a page.
     *
     * @param title of the window
     * @param script the page's own module
     * @param here the name of the place it belongs to
     */
    static Html open(String title, String script, String here) {
        Html html = new Html();
        html.markup("<!DOCTYPE html>\n").open("html", "lang=\"en\"").open("head");
        html.markup("<meta charset=\"utf-8\">\n");
        html.markup("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.element("title", title + " · Floorgauge");
        html.markup("<link rel=\"icon\" href=\"/page/icon.svg\" type=\"image/svg+xml\">\n");
        html.markup("<link rel=\"stylesheet\" href=\"/page/drawing.css\">\n");
        html.markup("<link rel=\"stylesheet\" href=\"/page/page.css\">\n");
        html.markup("<link rel=\"stylesheet\" href=\"/page/print.css\" media=\"print\">\n");
        if (script.equals("trends.js")) {
            html.markup("<link rel=\"stylesheet\" href=\"/page/uplot/uPlot.min.css\">\n");
        }
        html.markup("<script type=\"module\" src=\"/page/" + script + "\"></script>\n");
        html.close("head").open("body").markup(Hatching.DEFINITION);
        html.markup("<a class=\"skip\" href=\"#content\">To the page's content</a>\n");
        html.open("nav", "class=\"places\" aria-label=\"Pages\"").open("ul");
        for (Place place : PLACES) {
            String current = place.name().equals(here) ? " aria-current=\"page\"" : "";
            html.open("li")
                    .open("a", "href=\"" + place.address() + "\"" + current)
                    .text(place.name());
            html.close("a").close("li");
        }
        html.close("ul").close("nav");
        html.open("main", "id=\"content\" tabindex=\"-1\"");
        return html;
    }

    static String close(Html html) {
        html.markup("<p id=\"said\" role=\"status\" aria-live=\"polite\"></p>\n");
        html.markup("<dialog id=\"key-list\" aria-labelledby=\"key-list-title\"></dialog>\n");
        return html.close("main").close("body").close("html").finish();
    }
}
