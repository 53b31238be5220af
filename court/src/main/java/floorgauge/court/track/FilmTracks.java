package floorgauge.court.track;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The tracks of a film, or of a stretch of a long one.
 *
 * @param frameTimesSeconds presentation time of every frame looked at, by frame index, also of those in which nobody was
 *     seen
 * @param players in order of id, each id once
 * @param ball in order of time; empty where the ball was not looked for
 */
public record FilmTracks(
        SortedMap<Long, Double> frameTimesSeconds, List<PlayerTrack> players, Optional<List<BallObservation>> ball) {

    public FilmTracks {
        frameTimesSeconds = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(frameTimesSeconds));
        players = players.stream()
                .sorted(Comparator.comparingInt(PlayerTrack::id))
                .toList();
        Objects.requireNonNull(ball, "ball");
        ball = ball.map(List::copyOf);
        for (int i = 1; i < players.size(); i++) {
            if (players.get(i).id() == players.get(i - 1).id()) {
                throw new IllegalArgumentException(
                        "two tracks have id " + players.get(i).id());
            }
        }
    }

    /** The same tracks frame by frame, in order of time. */
    public Stream<FloorFrame> frames() {
        SortedMap<Long, List<PlayerSighting>> sightings = new TreeMap<>();
        for (PlayerTrack track : players) {
            for (PlayerObservation observation : track.observations()) {
                sightings
                        .computeIfAbsent(observation.frame(), f -> new ArrayList<>())
                        .add(new PlayerSighting(track.id(), track.team(), track.teamProbability(), observation));
            }
        }
        SortedMap<Long, BallObservation> balls = new TreeMap<>();
        ball.ifPresent(list -> list.forEach(b -> balls.put(b.frame(), b)));
        return frameTimesSeconds.entrySet().stream()
                .map(e -> new FloorFrame(
                        e.getKey(),
                        e.getValue(),
                        sightings.getOrDefault(e.getKey(), List.of()),
                        Optional.ofNullable(balls.get(e.getKey()))));
    }
}
