package floorgauge.eval.tracking;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerSighting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Tracks frame by frame.
 *
 * @param frames in order of frame, each frame once; frames may be left out (not labelled, or not looked at)
 */
public record TrackSequence<T>(List<TrackFrame<T>> frames) {

    public TrackSequence {
        frames = List.copyOf(frames);
        for (int i = 1; i < frames.size(); i++) {
            if (frames.get(i).frame() <= frames.get(i - 1).frame()) {
                throw new IllegalArgumentException("frames must run forward: frame "
                        + frames.get(i).frame() + " follows frame "
                        + frames.get(i - 1).frame());
            }
        }
    }

    /** The boxes in the picture; a sighting without a box is left out. */
    public static TrackSequence<ImageBox> boxes(FilmTracks tracks) {
        return of(tracks, s -> s.observation().box());
    }

    /** The feet on the floor, court frame. */
    public static TrackSequence<FloorPoint> floor(FilmTracks tracks) {
        return of(tracks, s -> Optional.of(s.observation().foot().mean()));
    }

    /** Any part of a sighting; sightings for which it is empty are left out. Frames without anybody stay in. */
    public static <T> TrackSequence<T> of(FilmTracks tracks, Function<PlayerSighting, Optional<T>> place) {
        return new TrackSequence<>(tracks.frames().map(f -> frame(f, place)).toList());
    }

    private static <T> TrackFrame<T> frame(FloorFrame frame, Function<PlayerSighting, Optional<T>> place) {
        List<Sighting<T>> sightings = new ArrayList<>();
        for (PlayerSighting player : frame.players()) {
            place.apply(player).ifPresent(p -> sightings.add(new Sighting<>(player.trackId(), p)));
        }
        return new TrackFrame<>(frame.frame(), frame.timeSeconds(), sightings);
    }
}
