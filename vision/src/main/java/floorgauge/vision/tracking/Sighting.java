package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.track.PlayerObservation;
import floorgauge.vision.kit.KitColour;
import java.util.Objects;
import java.util.Optional;

/**
 * A person seen in one frame: what tracking joins.
 *
 * @param observation where and how
 * @param kit colours of the clothes; empty where too little of them was seen
 */
public record Sighting(PlayerObservation observation, Optional<KitColour> kit) {

    public Sighting {
        Objects.requireNonNull(observation, "observation");
        Objects.requireNonNull(kit, "kit");
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
