package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.track.PlayerObservation;
import floorgauge.vision.kit.KitColour;
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
 */
public record Sighting(
        PlayerObservation observation,
        Optional<KitColour> kit,
        OptionalDouble movingShare,
        OptionalDouble heightMetres) {

    public Sighting {
        Objects.requireNonNull(observation, "observation");
        Objects.requireNonNull(kit, "kit");
        Objects.requireNonNull(movingShare, "movingShare");
        Objects.requireNonNull(heightMetres, "heightMetres");
    }

    /** A person whose height is not known. */
    public Sighting(PlayerObservation observation, Optional<KitColour> kit, OptionalDouble movingShare) {
        this(observation, kit, movingShare, OptionalDouble.empty());
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
