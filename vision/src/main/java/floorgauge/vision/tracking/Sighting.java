package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.track.PlayerObservation;
import floorgauge.vision.body.UnderHead;
import floorgauge.vision.kit.KitColour;
import floorgauge.vision.network.NumberBelief;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A person seen in one frame: what tracking joins.
 *
 * @param observation where and how
 * @param kit colours of the clothes; empty where too little of them was seen
 * @param movingShare share of the box that differs from the empty hall, 0 to 1; empty where that is not known
 * @param heightMetres from the feet to the top of the box, as the person stands; empty where either is out of sight
 * @param number what the jersey says; empty where nobody looked or neither chest nor back is in view
 * @param underHead the floor below the head, for any height; empty where the head or the camera's place is not known
 */
public record Sighting(
        PlayerObservation observation,
        Optional<KitColour> kit,
        OptionalDouble movingShare,
        OptionalDouble heightMetres,
        Optional<NumberBelief> number,
        Optional<UnderHead> underHead) {

    public Sighting {
        Objects.requireNonNull(observation, "observation");
        Objects.requireNonNull(kit, "kit");
        Objects.requireNonNull(movingShare, "movingShare");
        Objects.requireNonNull(heightMetres, "heightMetres");
        Objects.requireNonNull(number, "number");
        Objects.requireNonNull(underHead, "underHead");
    }

    /** A person at whose jersey nobody looked. */
    public Sighting(
            PlayerObservation observation,
            Optional<KitColour> kit,
            OptionalDouble movingShare,
            OptionalDouble heightMetres) {
        this(observation, kit, movingShare, heightMetres, Optional.empty(), Optional.empty());
    }

    /** A person whose height is not known. */
    public Sighting(PlayerObservation observation, Optional<KitColour> kit, OptionalDouble movingShare) {
        this(observation, kit, movingShare, OptionalDouble.empty(), Optional.empty(), Optional.empty());
    }

    Sighting withoutKit() {
        return new Sighting(observation, Optional.empty(), movingShare, heightMetres, number, underHead);
    }

    Sighting withoutBackground() {
        return new Sighting(observation, kit, OptionalDouble.empty(), heightMetres, number, underHead);
    }

    Sighting withFoot(FloorEstimate foot) {
        PlayerObservation o = observation;
        return new Sighting(
                new PlayerObservation(
                        o.frame(), o.timeSeconds(), foot, o.source(), o.box(), o.pose(), o.body(), o.score()),
                kit,
                movingShare,
                heightMetres,
                number,
                underHead);
    }

    long frame() {
        return observation.frame();
    }

    double timeSeconds() {
        return observation.timeSeconds();
    }

    FloorEstimate foot() {
        return observation.foot();
    }
}
