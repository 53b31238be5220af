package floorgauge.app.chain;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.Body;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.eval.tracking.MotChallengeRow;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Makes tracks out of MOTChallenge text, which carries neither times nor errors nor teams. */
final class MotTracks {

    /** A fair single-camera error of a foot on the floor (this project's assumption, named in the documentation). */
    private static final double ASSUMED_ERROR_METRES = 0.15;

    private MotTracks() {}

    /** Reads a file; rows without a place on the floor are left out. */
    static FilmTracks read(Path file, double framesPerSecond) {
        MotChallengeFile text = MotChallengeFile.read(file);
        SortedMap<Long, Double> times = new TreeMap<>();
        for (long frame = 0; frame <= text.lastFrame(); frame++) {
            times.put(frame, frame / framesPerSecond);
        }
        SortedMap<Integer, List<PlayerObservation>> players = new TreeMap<>();
        for (MotChallengeRow row : text.rows()) {
            row.floor()
                    .ifPresent(place -> players.computeIfAbsent(row.id(), i -> new ArrayList<>())
                            .add(observation(row, place, times.get(row.frame()))));
        }
        if (players.isEmpty()) {
            throw new MendableException(
                    file + " holds no floor metres in its three world columns; nothing can be measured");
        }
        List<PlayerTrack> tracks = new ArrayList<>();
        players.forEach((id, seen) -> tracks.add(new PlayerTrack(id, Team.UNKNOWN, 0, seen, List.of())));
        return new FilmTracks(times, tracks, Optional.empty());
    }

    private static PlayerObservation observation(MotChallengeRow row, FloorPoint place, double time) {
        return new PlayerObservation(
                row.frame(),
                time,
                new FloorEstimate(place, FloorCovariance.isotropic(ASSUMED_ERROR_METRES)),
                FootSource.BOX_BOTTOM,
                row.box(),
                Optional.empty(),
                Body.UNSEEN,
                Math.max(0, Math.min(1, row.confidence())));
    }
}
