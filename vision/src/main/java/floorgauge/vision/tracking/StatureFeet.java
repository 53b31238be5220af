package floorgauge.vision.tracking;

import floorgauge.court.track.FootSource;
import floorgauge.vision.body.UnderHead;
import java.util.Arrays;

/**
 * Places a person's feet with what the track taught about the person's height. Behind a screener the feet are out of sight or
 * taken for the screener's, while the head is in view: with the height known, the floor below the head is. The height is the
 * middle of those seen, its spread is posture and the error of the feet. Where both ankles are in view they tell alone, since a
 * player who runs or crouches is lower than he stands; but nobody is higher, and feet over which he would be are another's.
 */
final class StatureFeet {

    /** Heights seen before a track teaches anything. */
    private static final int LEAST = 12;

    /** Posture changes a player's height at least by this, metres (common practice). */
    private static final double LEAST_SPREAD = 0.06;

    /** Standard deviation over the middle absolute deviation of a normal distribution. */
    private static final double NORMAL = 1.4826;

    /** Heights this many spreads over the middle are not the person's. */
    private static final double NOBODY_GROWS = 2;

    private StatureFeet() {}

    /** The same sightings, each with its foot where feet and head together say. */
    static Tracklet placed(Tracklet track) {
        double[] heights = track.sightings().stream()
                .flatMapToDouble(s -> s.heightMetres().stream())
                .toArray();
        if (heights.length < LEAST) {
            return track;
        }
        double height = middle(heights);
        double spread = Math.max(
                LEAST_SPREAD,
                NORMAL
                        * middle(Arrays.stream(heights)
                                .map(h -> Math.abs(h - height))
                                .toArray()));
        return new Tracklet(
                track.sightings().stream().map(s -> placed(s, height, spread)).toList());
    }

    private static Sighting placed(Sighting s, double height, double spread) {
        if (s.underHead().isEmpty()) {
            return s;
        }
        UnderHead head = s.underHead().get();
        double over = head.heightOver(s.foot().mean());
        if (over > height + NOBODY_GROWS * spread) {
            return s.withFoot(head.at(height, spread));
        }
        return s.observation().source() == FootSource.ANKLES
                ? s
                : s.withFoot(s.foot().with(head.at(height, spread)));
    }

    private static double middle(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
