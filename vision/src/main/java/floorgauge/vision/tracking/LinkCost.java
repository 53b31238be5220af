package floorgauge.vision.tracking;

import floorgauge.vision.kit.KitColour;
import floorgauge.vision.kit.KitLikelihood;
import floorgauge.vision.number.TrackNumbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What joining the end of one tracklet to the start of another costs, in nats: minus the logarithm of the likelihood ratio
 * of one person against two. The first is filtered forward over the gap and compared with the second filtered backward, in
 * position and velocity; their kits near the gap are compared as the film has taught.
 */
final class LinkCost {

    /** Kits are compared over this much of each tracklet, nearest the gap. */
    private static final double KIT_SECONDS = 3;

    /** Two pieces of one person may overlap by this much: both boxes of a double, or a sighting that went astray. */
    static final double LONGEST_OVERLAP_SECONDS = 0.5;

    /** Velocity of a person who appears: normal with this standard deviation per axis, m/s. */
    private static final double APPEARING_SPEED = 2;

    private final List<Tracklet> tracklets;
    private final FloorMotion motion;
    private final KitLikelihood kits;
    private final double longestGapSeconds;
    private final double logAppearing;
    private final List<FloorState> ends = new ArrayList<>();
    private final List<FloorState> starts = new ArrayList<>();
    private final List<Optional<KitColour>> endKits = new ArrayList<>();
    private final List<Optional<KitColour>> startKits = new ArrayList<>();
    private final List<TrackNumbers.Shares> numbers = new ArrayList<>();

    /** @param appearingDensity persons who appear, per square metre, over a gap */
    LinkCost(
            List<Tracklet> tracklets,
            FloorMotion motion,
            KitLikelihood kits,
            double longestGapSeconds,
            double appearingDensity) {
        this.tracklets = tracklets;
        this.motion = motion;
        this.kits = kits;
        this.longestGapSeconds = longestGapSeconds;
        this.logAppearing = Math.log(appearingDensity) - Math.log(2 * Math.PI * APPEARING_SPEED * APPEARING_SPEED);
        for (Tracklet t : tracklets) {
            ends.add(t.endState(motion));
            starts.add(t.startState(motion));
            endKits.add(t.kit(t.endSeconds() - KIT_SECONDS, t.endSeconds()));
            numbers.add(TrackNumbers.Shares.of(t.numbers()));
            startKits.add(t.kit(t.startSeconds(), t.startSeconds() + KIT_SECONDS));
        }
    }

    /** Positive infinity where the two can't be joined. */
    double of(int before, int after) {
        double gap = tracklets.get(after).startSeconds() - tracklets.get(before).endSeconds();
        if (!(gap >= -LONGEST_OVERLAP_SECONDS && gap <= longestGapSeconds)) {
            return Double.POSITIVE_INFINITY;
        }
        if (gap <= 0) {
            return ofOverlapping(before, after);
        }
        return cost(before, after, motion.predict(ends.get(before), gap));
    }

    /** A person whose next piece began before the last one was given up: the last one counts up to there. */
    private double ofOverlapping(int before, int after) {
        double start = tracklets.get(after).startSeconds();
        if (tracklets.get(after).endSeconds() <= tracklets.get(before).endSeconds()) {
            return Double.POSITIVE_INFINITY;
        }
        Optional<Tracklet> earlier = tracklets.get(before).before(start);
        if (earlier.isEmpty()) {
            return Double.POSITIVE_INFINITY;
        }
        double gap = start - earlier.get().endSeconds();
        return cost(before, after, motion.predict(earlier.get().endState(motion), gap));
    }

    private double cost(int before, int after, FloorState expected) {
        double ratio = StateComparison.logDensity(expected, starts.get(after)) - logAppearing;
        Optional<KitColour> one = endKits.get(before);
        Optional<KitColour> other = startKits.get(after);
        if (one.isPresent() && other.isPresent()) {
            ratio += kits.logRatio(one.get(), other.get());
        }
        ratio += numbers.get(before).logRatio(numbers.get(after));
        return -ratio;
    }
}
