package floorgauge.app.review;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.Map;

/** The page's own files: a fixed list, so that no path leads elsewhere. */
final class Assets {

    private static final String FOLDER = "/floorgauge/app/review/";
    private static final String SHEET_STYLE = "/floorgauge/app/sheet/sheet.css";

    /** The chart library's package; its version is the one that the root pom names. */
    private static final String CHARTS = "/META-INF/resources/webjars/uplot/1.6.30/dist/";

    private static final String SCRIPT = "text/javascript; charset=utf-8";
    private static final String STYLE = "text/css; charset=utf-8";

    private static final Map<String, String> TYPES = Map.ofEntries(
            Map.entry("page.css", STYLE),
            Map.entry("drawing.css", STYLE),
            Map.entry("print.css", STYLE),
            Map.entry("icon.svg", "image/svg+xml"),
            Map.entry("server.js", SCRIPT),
            Map.entry("keys.js", SCRIPT),
            Map.entry("start.js", SCRIPT),
            Map.entry("sheet.js", SCRIPT),
            Map.entry("finding.js", SCRIPT),
            Map.entry("clock.js", SCRIPT),
            Map.entry("plan.js", SCRIPT),
            Map.entry("overlay.js", SCRIPT),
            Map.entry("rule.js", SCRIPT),
            Map.entry("draw.js", SCRIPT),
            Map.entry("players.js", SCRIPT),
            Map.entry("trends.js", SCRIPT),
            Map.entry("keyspage.js", SCRIPT),
            Map.entry("uplot/uPlot.esm.js", SCRIPT),
            Map.entry("uplot/uPlot.min.css", STYLE));

    private Assets() {}

    private static String resource(String name) {
        if (name.equals("drawing.css")) {
            // The drawings of the page look as those of the printed sheet do.
            return SHEET_STYLE;
        }
        return name.startsWith("uplot/") ? CHARTS + name.substring("uplot/".length()) : FOLDER + name;
    }

    /** Answers with a file of the list. @throws Guard.Refused where it is not on it */
    static void answer(Context request, String name) {
        String type = TYPES.get(name);
        if (type == null) {
            throw new Guard.Refused(404, "there is no such page");
        }
        try (InputStream in = Assets.class.getResourceAsStream(resource(name))) {
            if (in == null) {
                throw new IllegalStateException("the program lacks " + name);
            }
            request.contentType(type).header("Cache-Control", "no-cache").result(in.readAllBytes());
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + name, e);
        }
    }
}
