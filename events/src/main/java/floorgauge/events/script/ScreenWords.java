package floorgauge.events.script;

import floorgauge.events.screen.ScreenKind;
import java.util.Arrays;
import java.util.List;

/** The kinds of screen that a script may name. */
final class ScreenWords {

    static final List<String> KINDS =
            Arrays.stream(ScreenKind.values()).map(ScreenKind::words).toList();

    private ScreenWords() {}
}
