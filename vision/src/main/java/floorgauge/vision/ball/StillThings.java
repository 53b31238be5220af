package floorgauge.vision.ball;

import floorgauge.vision.network.BallSighting;
import java.util.ArrayList;
import java.util.List;

/**
 * Leaves out what looks like a ball and lies still: a rim, a lamp, the head of someone who sits by the floor. A ball in play
 * moves by half its radius within seconds, even in the hands of someone who stands. Where the camera moves nothing lies still
 * in the picture, and all stays.
 */
final class StillThings {

    /** So long before and after a look the others are compared with it, seconds. */
    private static final double ABOUT_SECONDS = 5;

    /** Looks over a shorter time than this tell nothing: a held ball may rest, seconds. */
    private static final double LEAST_SECONDS = 4;

    /** Seen at one place in this share of the looks it is no ball in play. */
    private static final double MOSTLY = 0.6;

    /** A place is as large as this share of the radius. */
    private static final double SAME_PLACE = 0.5;

    private StillThings() {}

    /** The looks without still things, as many and in the same order. */
    static List<BallLook> without(List<BallLook> looks) {
        List<BallLook> result = new ArrayList<>();
        int from = 0;
        int to = 0;
        for (BallLook look : looks) {
            while (looks.get(from).timeSeconds() < look.timeSeconds() - ABOUT_SECONDS) {
                from++;
            }
            while (to < looks.size() && looks.get(to).timeSeconds() <= look.timeSeconds() + ABOUT_SECONDS) {
                to++;
            }
            List<BallLook> about = looks.subList(from, to);
            double seconds =
                    about.get(about.size() - 1).timeSeconds() - about.get(0).timeSeconds();
            result.add(
                    seconds < LEAST_SECONDS
                            ? look
                            : new BallLook(
                                    look.frame(),
                                    look.timeSeconds(),
                                    look.seen().stream()
                                            .filter(s -> !isStill(s, about))
                                            .toList()));
        }
        return result;
    }

    private static boolean isStill(BallSighting sighting, List<BallLook> about) {
        double near = SAME_PLACE * sighting.radiusPixels();
        long there = about.stream()
                .filter(look -> look.seen().stream().anyMatch(s -> s.centre().distanceTo(sighting.centre()) <= near))
                .count();
        return there >= MOSTLY * about.size();
    }
}
