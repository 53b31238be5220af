package floorgauge.eval.ablation;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerSighting;
import floorgauge.court.track.Pose;
import floorgauge.eval.film.RenderedTruth;
import floorgauge.eval.pose.PoseFrame;
import floorgauge.eval.pose.PosedPerson;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * A result's legs against the truth's: how often the left one is the true right one, over looks in which the ankles are clearly
 * apart, and how much too high the ankles are.
 */
final class LegTally {

    private static final double SAME_BOX = 0.5;

    /** Ankles nearer than this share of the box's height are not told apart. */
    private static final double LEAST_APART = 0.08;

    private static final double LEAST_SCORE = 0.3;

    private LegTally() {}

    /** The share; empty where no look tells. */
    static OptionalDouble exchanged(RenderedTruth truth, FilmTracks tracks) {
        long[] counts = new long[2];
        tracks.frames().forEach(frame -> add(frame, truth.poses().getOrDefault(frame.frame(), List.of()), counts));
        return counts[0] + counts[1] == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of((double) counts[1] / (counts[0] + counts[1]));
    }

    private static void add(FloorFrame frame, List<PoseFrame.Truth> there, long[] counts) {
        for (PlayerSighting player : frame.players()) {
            PlayerObservation seen = player.observation();
            if (seen.pose().isPresent() && seen.box().isPresent()) {
                ImageBox box = seen.box().get();
                Optional<PosedPerson> person = there.stream()
                        .map(PoseFrame.Truth::person)
                        .filter(p -> p.box().intersectionOverUnion(box) >= SAME_BOX)
                        .max(Comparator.comparingDouble(p -> p.box().intersectionOverUnion(box)));
                person.ifPresent(p -> add(p, seen.pose().get(), box.height(), counts));
            }
        }
    }

    private static void add(PosedPerson person, Pose seen, double height, long[] counts) {
        if (!person.labelled().containsAll(Set.of(Joint.LEFT_ANKLE, Joint.RIGHT_ANKLE))
                || Math.min(
                                seen.at(Joint.LEFT_ANKLE).score(),
                                seen.at(Joint.RIGHT_ANKLE).score())
                        < LEAST_SCORE) {
            return;
        }
        PixelPoint left = person.pose().at(Joint.LEFT_ANKLE).position();
        PixelPoint right = person.pose().at(Joint.RIGHT_ANKLE).position();
        PixelPoint seenLeft = seen.at(Joint.LEFT_ANKLE).position();
        PixelPoint seenRight = seen.at(Joint.RIGHT_ANKLE).position();
        if (Math.min(distance(left, right), distance(seenLeft, seenRight)) < LEAST_APART * height) {
            return;
        }
        double straight = distance(left, seenLeft) + distance(right, seenRight);
        double crossed = distance(left, seenRight) + distance(right, seenLeft);
        counts[straight <= crossed ? 0 : 1]++;
    }

    private static double distance(PixelPoint a, PixelPoint b) {
        return Math.hypot(a.x() - b.x(), a.y() - b.y());
    }
}
