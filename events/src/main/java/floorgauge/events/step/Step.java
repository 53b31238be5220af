package floorgauge.events.step;

import floorgauge.court.floor.FloorPoint;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a player does from one time to another.
 *
 * @param kind what
 * @param player who
 * @param other to whom the ball goes, or for whom the screen is
 * @param fromSeconds start
 * @param toSeconds end
 * @param way where the player goes, court frame; empty where he stands
 * @param place where it happens: a screen's place, a shot's, a pass's start
 * @param target where a pass is caught, or the defender whom a screen meets
 * @param label what a screen is called, such as {@code down screen}; empty for others
 */
public record Step(
        StepKind kind,
        int player,
        OptionalInt other,
        double fromSeconds,
        double toSeconds,
        List<FloorPoint> way,
        FloorPoint place,
        Optional<FloorPoint> target,
        String label) {

    public Step {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(target, "target");
        Objects.requireNonNull(label, "label");
        way = List.copyOf(way);
        if (!(toSeconds >= fromSeconds)) {
            throw new IllegalArgumentException("a step ends after its start: " + fromSeconds + ", " + toSeconds);
        }
    }

    /** Where the player ends up. */
    public FloorPoint end() {
        return way.isEmpty() ? place : way.get(way.size() - 1);
    }

    /** Whether this player has to do with the step: does it, or gets the ball. */
    public boolean binds(int trackId) {
        return player == trackId
                || ((kind == StepKind.PASS || kind == StepKind.HANDOFF)
                        && other.isPresent()
                        && other.getAsInt() == trackId);
    }
}
