package floorgauge.events.finding;

import floorgauge.court.floor.FloorPoint;
import java.util.List;
import java.util.Objects;

/** Something to draw on the film and on the plan of the floor, as a dimension on a drawing. */
public sealed interface Mark {

    /**
     * A distance between two players at one moment.
     *
     * @param timeSeconds when
     * @param fromTrackId one end
     * @param toTrackId the other end
     * @param figure the distance, or the gap between the bodies
     */
    record Distance(double timeSeconds, int fromTrackId, int toTrackId, Figure figure) implements Mark {

        public Distance {
            Objects.requireNonNull(figure, "figure");
        }
    }

    /**
     * A distance between a player and a place on the floor at one moment.
     *
     * @param timeSeconds when
     * @param fromTrackId the player
     * @param to the place, court frame
     * @param figure the distance
     */
    record DistanceToPoint(double timeSeconds, int fromTrackId, FloorPoint to, Figure figure) implements Mark {

        public DistanceToPoint {
            Objects.requireNonNull(to, "to");
            Objects.requireNonNull(figure, "figure");
        }
    }

    /**
     * A player's way over the floor during a span.
     *
     * @param trackId who
     * @param fromSeconds start
     * @param toSeconds end, after the start
     * @param figure what is measured on it, such as a speed
     */
    record Path(int trackId, double fromSeconds, double toSeconds, Figure figure) implements Mark {

        public Path {
            Objects.requireNonNull(figure, "figure");
            if (!(toSeconds >= fromSeconds)) {
                throw new IllegalArgumentException("a path ends after its start: " + fromSeconds + ", " + toSeconds);
            }
        }
    }

    /**
     * The area spanned by players at one moment.
     *
     * @param timeSeconds when
     * @param trackIds the players on its corners, in turn
     * @param figure the area
     */
    record Area(double timeSeconds, List<Integer> trackIds, Figure figure) implements Mark {

        public Area {
            trackIds = List.copyOf(trackIds);
            Objects.requireNonNull(figure, "figure");
        }
    }

    /**
     * A span of time between two ticks of the time rule.
     *
     * @param fromSeconds first tick
     * @param toSeconds second tick
     * @param figure the delay
     */
    record Delay(double fromSeconds, double toSeconds, Figure figure) implements Mark {

        public Delay {
            Objects.requireNonNull(figure, "figure");
        }
    }
}
