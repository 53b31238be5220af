package floorgauge.app.sheet;

/** The hatching that stands for "not seen", defined once a page. */
public final class Hatching {

    public static final String DEFINITION =
            "<svg width=\"0\" height=\"0\" class=\"definitions\" aria-hidden=\"true\"><defs>"
                    + pattern("hatch", "hatch-line")
                    + pattern("hatch-on-film", "hatch-line-on-film")
                    + "</defs></svg>\n";

    private Hatching() {}

    private static String pattern(String id, String style) {
        return "<pattern id=\"" + id + "\" width=\"5\" height=\"5\" patternUnits=\"userSpaceOnUse\""
                + " patternTransform=\"rotate(45)\"><line x1=\"0\" y1=\"0\" x2=\"0\" y2=\"5\" class=\"" + style
                + "\"/></pattern>";
    }
}
