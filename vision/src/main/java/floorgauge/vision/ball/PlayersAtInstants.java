package floorgauge.vision.ball;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Pose;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Where the players are between the frames in which they were looked for. */
final class PlayersAtInstants {

    /** Between two observations further apart a player's place is not known well enough. */
    private static final double LONGEST_GAP = 0.5;

    private static final double LEAST_WRIST_SCORE = 0.25;

    private final SortedMap<Integer, PlayerTrack> tracks = new TreeMap<>();

    PlayersAtInstants(Collection<PlayerTrack> tracks) {
        tracks.forEach(track -> this.tracks.put(track.id(), track));
    }

    /** Everyone whose place at this time is known, in order of id. */
    List<PlayerNear> at(double timeSeconds) {
        List<PlayerNear> players = new ArrayList<>();
        for (PlayerTrack track : tracks.values()) {
            at(track, timeSeconds).ifPresent(players::add);
        }
        return players;
    }

    /** Empty where there is no such track or its place at this time is not known. */
    Optional<PlayerNear> at(int id, double timeSeconds) {
        return Optional.ofNullable(tracks.get(id)).flatMap(track -> at(track, timeSeconds));
    }

    private static Optional<PlayerNear> at(PlayerTrack track, double time) {
        List<PlayerObservation> list = track.observations();
        int after = firstNotBefore(list, time);
        if (after < list.size() && list.get(after).timeSeconds() == time) {
            return Optional.of(of(track, list.get(after).foot(), list.get(after), list.get(after), 0));
        }
        if (after == 0 || after == list.size()) {
            return Optional.empty();
        }
        PlayerObservation a = list.get(after - 1);
        PlayerObservation b = list.get(after);
        if (b.timeSeconds() - a.timeSeconds() > LONGEST_GAP) {
            return Optional.empty();
        }
        double share = (time - a.timeSeconds()) / (b.timeSeconds() - a.timeSeconds());
        return Optional.of(of(track, between(a.foot(), b.foot(), share), a, b, share));
    }

    private static PlayerNear of(
            PlayerTrack track, FloorEstimate foot, PlayerObservation a, PlayerObservation b, double share) {
        List<PixelPoint> wrists = Stream.of(Joint.LEFT_WRIST, Joint.RIGHT_WRIST)
                .flatMap(j -> wrist(a.pose(), b.pose(), j, share).stream())
                .toList();
        return new PlayerNear(track.id(), track.team(), foot, wrists);
    }

    private static Optional<PixelPoint> wrist(Optional<Pose> a, Optional<Pose> b, Joint joint, double share) {
        Optional<Keypoint> first = a.map(p -> p.at(joint)).filter(k -> k.score() >= LEAST_WRIST_SCORE);
        Optional<Keypoint> second = b.map(p -> p.at(joint)).filter(k -> k.score() >= LEAST_WRIST_SCORE);
        if (first.isEmpty() || second.isEmpty()) {
            return first.or(() -> second).map(Keypoint::position);
        }
        PixelPoint p = first.get().position();
        PixelPoint q = second.get().position();
        return Optional.of(new PixelPoint(p.x() + share * (q.x() - p.x()), p.y() + share * (q.y() - p.y())));
    }

    private static FloorEstimate between(FloorEstimate a, FloorEstimate b, double share) {
        FloorCovariance c = a.covariance();
        FloorCovariance d = b.covariance();
        return new FloorEstimate(
                new FloorPoint(
                        a.mean().xMetres()
                                + share * (b.mean().xMetres() - a.mean().xMetres()),
                        a.mean().yMetres()
                                + share * (b.mean().yMetres() - a.mean().yMetres())),
                new FloorCovariance(
                        c.xx() + share * (d.xx() - c.xx()),
                        c.xy() + share * (d.xy() - c.xy()),
                        c.yy() + share * (d.yy() - c.yy())));
    }

    private static int firstNotBefore(List<PlayerObservation> list, double time) {
        int low = 0;
        int high = list.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (list.get(middle).timeSeconds() < time) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
