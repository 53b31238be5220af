package floorgauge.eval.tracking;

import java.util.Objects;

/**
 * One person in one frame, as truth or as result.
 *
 * @param id identity within the film
 * @param place where: a box in the picture, a point on the floor, a pose
 */
public record Sighting<T>(int id, T place) {

    public Sighting {
        Objects.requireNonNull(place, "place");
    }
}
