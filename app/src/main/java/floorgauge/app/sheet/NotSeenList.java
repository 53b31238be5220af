package floorgauge.app.sheet;

import floorgauge.events.finding.NotSeen;
import java.util.List;

/** What could not be measured, and why: hatched, never guessed. */
public final class NotSeenList {

    private NotSeenList() {}

    /** Writes nothing where everything was seen. */
    public static void write(Html html, List<NotSeen> notSeen, String title) {
        if (notSeen.isEmpty()) {
            return;
        }
        html.open("div", "class=\"not-seen\"").element("h3", title);
        html.open("ul");
        for (NotSeen item : notSeen) {
            html.open("li").element("b", item.what()).text(": " + item.why()).close("li");
        }
        html.close("ul").close("div");
    }
}
