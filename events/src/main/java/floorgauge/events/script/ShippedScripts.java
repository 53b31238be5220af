package floorgauge.events.script;

import java.util.List;
import java.util.function.UnaryOperator;

/** The scripts that come with the project: general knowledge of the trade, no team's own. */
public final class ShippedScripts {

    private static final List<String> NAMES = List.of(
            "chin",
            "chin-flare",
            "double-drag",
            "elevator",
            "flex",
            "floppy",
            "floppy-curl",
            "horns-double",
            "horns-elbow",
            "horns-stagger",
            "motion-weak");

    private ShippedScripts() {}

    /** In the order of the alphabet. */
    public static List<String> names() {
        return NAMES;
    }

    /** Where a script's text lies among the resources of this class, such as {@code floppy.yaml}. */
    public static String resource(String name) {
        return name + ".yaml";
    }

    /**
     * All of them.
     *
     * @param text gives the text of a resource of this class; this module reads no files itself
     */
    public static List<Script> all(UnaryOperator<String> text) {
        return NAMES.stream()
                .map(n -> ScriptFile.read(text.apply(resource(n)), resource(n)))
                .toList();
    }
}
