package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.track.Body;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerObservation;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;

/**
 * Fills the frames between two sightings of a track with predicted positions: the state filtered forward from before and the
 * one filtered backward from after, fused (D. Fraser and J. Potter, "The optimum linear smoother as a combination of two
 * optimum linear filters", 1969). The covariance grows towards the middle of the gap.
 */
final class GapFiller {

    /** Boxes are predicted so far from a sighting. */
    private static final double LONGEST_BOX_SECONDS = 0.4;

    /** Of a foot's variance: posture, the leg taken for the other, where the court lies. */
    private static final double LASTING_SHARE = 0.7;

    private final FloorMotion motion;
    private final double longestGapSeconds;
    private final SortedMap<Long, Double> frameTimes;
    private final double lastLookSeconds;

    /**
     * @param frameTimes of every frame of the film, in seconds
     * @param lastLookSeconds when people were looked for the last time; whoever was seen then is still there in the frames after it
     */
    GapFiller(
            FloorMotion motion, double longestGapSeconds, SortedMap<Long, Double> frameTimes, double lastLookSeconds) {
        this.motion = motion;
        this.longestGapSeconds = longestGapSeconds;
        this.frameTimes = frameTimes;
        this.lastLookSeconds = lastLookSeconds;
    }

    /** The track's observations with the gaps that are short enough filled. */
    List<PlayerObservation> filled(Tracklet track) {
        List<Sighting> seen = track.sightings();
        List<FloorState> forward = forward(seen);
        List<FloorState> backward = backward(seen);
        List<PlayerObservation> result = new ArrayList<>();
        for (int i = 0; i < seen.size(); i++) {
            result.add(seen.get(i).observation());
            if (i + 1 < seen.size()) {
                Sighting next = seen.get(i + 1);
                if (next.timeSeconds() - seen.get(i).timeSeconds() <= longestGapSeconds) {
                    fill(result, seen.get(i), forward.get(i), next, backward.get(i + 1));
                }
            }
        }
        Sighting last = seen.get(seen.size() - 1);
        if (last.timeSeconds() >= lastLookSeconds) {
            end(result, last, forward.get(seen.size() - 1));
        }
        return result;
    }

    /** The frames between the last look and the film's end, at most as many as between two looks. */
    private void end(List<PlayerObservation> into, Sighting last, FloorState ahead) {
        for (Map.Entry<Long, Double> frame :
                frameTimes.tailMap(last.frame() + 1).entrySet()) {
            double later = frame.getValue() - last.timeSeconds();
            if (later > LONGEST_BOX_SECONDS) {
                return;
            }
            FloorEstimate ran = motion.predict(ahead, later).positionEstimate();
            FloorEstimate foot = new FloorEstimate(ran.mean(), ran.covariance().plus(lasting(last.foot(), 1)));
            into.add(predicted(
                    frame.getKey(), frame.getValue(), foot, last.observation().box()));
        }
    }

    private static PlayerObservation predicted(long frame, double seconds, FloorEstimate foot, Optional<ImageBox> box) {
        return new PlayerObservation(frame, seconds, foot, FootSource.PREDICTED, box, Optional.empty(), Body.UNSEEN, 0);
    }

    private void fill(
            List<PlayerObservation> into, Sighting before, FloorState ahead, Sighting after, FloorState behind) {
        SortedMap<Long, Double> between = frameTimes.subMap(before.frame() + 1, after.frame());
        for (Map.Entry<Long, Double> frame : between.entrySet()) {
            double t = frame.getValue();
            FloorState a = motion.predict(ahead, t - before.timeSeconds());
            FloorState b = Tracklet.reversed(motion.predict(behind, after.timeSeconds() - t));
            double share = (t - before.timeSeconds()) / (after.timeSeconds() - before.timeSeconds());
            FloorEstimate fused = StateComparison.fuse(a, b).positionEstimate();
            FloorEstimate foot = new FloorEstimate(
                    fused.mean(),
                    fused.covariance().plus(lasting(before.foot(), 1 - share)).plus(lasting(after.foot(), share)));
            Optional<ImageBox> box = isNear(t, before, after)
                    ? between(before.observation().box(), after.observation().box(), share)
                    : Optional.empty();
            into.add(predicted(frame.getKey(), t, foot, box));
        }
    }

    /** A box is good for as long as a step takes; then the person may stand otherwise. */
    private static boolean isNear(double seconds, Sighting before, Sighting after) {
        return Math.min(seconds - before.timeSeconds(), after.timeSeconds() - seconds) <= LONGEST_BOX_SECONDS;
    }

    /** The part of a sighting's error that its neighbours have too, so that filtering does not average it out. */
    private static FloorCovariance lasting(FloorEstimate seen, double share) {
        FloorCovariance c = seen.covariance();
        double scale = LASTING_SHARE * share;
        return new FloorCovariance(scale * c.xx(), scale * c.xy(), scale * c.yy());
    }

    private static Optional<ImageBox> between(Optional<ImageBox> before, Optional<ImageBox> after, double share) {
        if (before.isEmpty() || after.isEmpty()) {
            return Optional.empty();
        }
        ImageBox a = before.get();
        ImageBox b = after.get();
        return Optional.of(new ImageBox(
                a.left() + share * (b.left() - a.left()),
                a.top() + share * (b.top() - a.top()),
                a.width() + share * (b.width() - a.width()),
                a.height() + share * (b.height() - a.height())));
    }

    private List<FloorState> forward(List<Sighting> seen) {
        List<FloorState> states = new ArrayList<>();
        states.add(motion.start(seen.get(0).foot()));
        for (int i = 1; i < seen.size(); i++) {
            double dt = seen.get(i).timeSeconds() - seen.get(i - 1).timeSeconds();
            states.add(motion.updateRobustly(
                    motion.predict(states.get(i - 1), dt), seen.get(i).foot()));
        }
        return states;
    }

    /** In reversed time: velocities point back. */
    private List<FloorState> backward(List<Sighting> seen) {
        FloorState[] states = new FloorState[seen.size()];
        states[seen.size() - 1] = motion.start(seen.get(seen.size() - 1).foot());
        for (int i = seen.size() - 2; i >= 0; i--) {
            double dt = seen.get(i + 1).timeSeconds() - seen.get(i).timeSeconds();
            states[i] = motion.updateRobustly(
                    motion.predict(states[i + 1], dt), seen.get(i).foot());
        }
        return List.of(states);
    }
}
