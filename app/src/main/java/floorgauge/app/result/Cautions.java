package floorgauge.app.result;

import java.util.List;

/** What everyone who reads a result must know; it stands on every sheet and in every file of findings. */
public final class Cautions {

    /** One sentence or two each. */
    public static final List<String> TEXT = List.of(
            "Figures from a single camera carry errors of centimetres to decimetres, shown beside each: "
                    + "± is one standard error.",
            "They are teaching aids: not for officiating, injury or concussion assessment, selection or pay.",
            "Film of players, minors above all, needs consent and follows local rules; files stay on the team's own"
                    + " machine.");

    private Cautions() {}
}
