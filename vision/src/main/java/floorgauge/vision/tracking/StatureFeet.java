package floorgauge.vision.tracking;

import floorgauge.court.track.FootSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Places a person's feet with what the track taught about the person's height. Behind a screener the feet are out of sight or
 * taken for the screener's, while the head is in view: with the height known, the floor below the head is. The height is the
 * middle of those seen, or of those seen about that time where that is lower; its spread is posture and the error of the feet.
 * Where both ankles are in view the head has a say only
 * if it would be too high over them: a player who runs or crouches is lower than he stands, nobody is higher.
 */
final class StatureFeet {

    /** Heights seen before a track teaches anything. */
    private static final int LEAST = 12;

    /** Posture changes a player's height at least by this, metres (common practice). */
    private static final double LEAST_SPREAD = 0.06;

    /** Standard deviation over the middle absolute deviation of a normal distribution. */
    private static final double NORMAL = 1.4826;

    /** A run or a crouch lasts about so long. */
    private static final double POSTURE_SECONDS = 1;

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
                NORMAL * middle(Arrays.stream(heights).map(h -> Math.abs(h - height)).toArray()));
        List<Sighting> result = new ArrayList<>();
        for (Sighting s : track.sightings()) {
            boolean feetTell = s.observation().source() == FootSource.ANKLES
                    && s.heightMetres().orElse(0) <= height;
            if (feetTell || s.underHead().isEmpty()) {
                result.add(s);
            } else {
                double now = Math.min(
                        height,
                        track.heightMetres(s.timeSeconds() - POSTURE_SECONDS, s.timeSeconds() + POSTURE_SECONDS)
                                .orElse(height));
                result.add(s.withFoot(s.foot().with(s.underHead().get().at(now, spread))));
            }
        }
        return new Tracklet(result);
    }

    private static double middle(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
