package floorgauge.eval.ablation;

import floorgauge.vision.network.Precision;
import floorgauge.vision.tracking.TrackingParts;
import floorgauge.vision.tracking.TrackingParts.Part;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * The tracking with a part changed.
 *
 * @param name of the row
 * @param parts that work
 * @param precision of the networks
 * @param seenAnew whether the networks see something else than with all parts
 */
record Variant(String name, TrackingParts parts, Precision precision, boolean seenAnew) {

    Variant {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(parts, "parts");
        Objects.requireNonNull(precision, "precision");
    }

    static List<Variant> all() {
        List<Variant> variants = new ArrayList<>();
        variants.add(new Variant("all parts", TrackingParts.ALL, Precision.SINGLE, true));
        variants.add(without("association over the whole film", Part.WHOLE_FILM, false));
        variants.add(without("appearance (kits)", Part.APPEARANCE, false));
        variants.add(without("background", Part.BACKGROUND, false));
        variants.add(without("legs kept apart over time", Part.SIDES, false));
        variants.add(without("pose", Part.POSE, true));
        variants.add(without("scale", Part.SCALE, true));
        variants.add(new Variant("all parts, networks in bfloat16", TrackingParts.ALL, Precision.BFLOAT16, true));
        return variants;
    }

    private static Variant without(String what, Part part, boolean seenAnew) {
        return new Variant("without " + what, TrackingParts.allBut(part), Precision.SINGLE, seenAnew);
    }
}
