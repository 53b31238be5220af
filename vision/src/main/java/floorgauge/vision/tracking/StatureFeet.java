package floorgauge.vision.tracking;

import floorgauge.court.track.FootSource;
import floorgauge.vision.body.UnderHead;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Places a person's feet with what the track taught about the person's height. Behind a screener the feet are out of sight or
 * taken for the screener's, while the head is in view: with the height known, the floor below the head is. The height is the
 * middle of those seen, its spread is posture and the error of the feet. Where both ankles are in view they tell alone, since a
 * player who runs or crouches is lower than he stands; but nobody is higher, and feet over which he would be are another's. The
 * feet of one who runs are off the floor by a height that grows with his speed.
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

    /** Either way of a sighting, to tell how fast someone goes. */
    private static final double SPEED_SECONDS = 0.3;

    /** Faster than this a player runs, m/s (common practice): there are times when neither foot is down. */
    private static final double RUNS = 2;

    /**
     * How high the lower foot of a runner is on average, metres for every m/s: at 4 m/s he is in the air for three tenths of his
     * stride, with a foot at 0.1 m at least, and leaves the floor heel first, 0.04 m on average (common practice). Without it
     * runners stand too far from the camera.
     */
    private static final double RAISED_SECONDS = 0.015;

    /** The standard deviation of that, over a stride and from one runner to the next. */
    private static final double RAISED_ERROR_SECONDS = 0.015;

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
        List<Sighting> placed = new ArrayList<>();
        for (int i = 0; i < track.sightings().size(); i++) {
            placed.add(placed(track.sightings().get(i), height, spread, speed(track.sightings(), i)));
        }
        return new Tracklet(placed);
    }

    /** How fast a person goes, m/s, from where he is seen shortly before and after. */
    private static double speed(List<Sighting> track, int at) {
        double time = track.get(at).timeSeconds();
        int from = at;
        while (from > 0 && time - track.get(from - 1).timeSeconds() <= SPEED_SECONDS) {
            from--;
        }
        int to = at;
        while (to < track.size() - 1 && track.get(to + 1).timeSeconds() - time <= SPEED_SECONDS) {
            to++;
        }
        Sighting a = track.get(from);
        Sighting b = track.get(to);
        double seconds = b.timeSeconds() - a.timeSeconds();
        return seconds < SPEED_SECONDS ? 0 : a.foot().mean().distanceTo(b.foot().mean()) / seconds;
    }

    private static Sighting placed(Sighting s, double height, double spread, double speed) {
        if (s.underHead().isEmpty()) {
            return s;
        }
        UnderHead head = s.underHead().get();
        double over = head.heightOver(s.foot().mean());
        if (over > height + NOBODY_GROWS * spread) {
            return s.withFoot(head.at(height, spread));
        }
        if (speed > RUNS) {
            return s.withFoot(head.lowered(s.foot(), RAISED_SECONDS * speed, RAISED_ERROR_SECONDS * speed));
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
