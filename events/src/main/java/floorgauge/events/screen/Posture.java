package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.PlayerPath;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * How a screener stands, over the time for which he has rested: who runs by hides him just then, and is taken for him, while
 * one who has set his feet does not change them.
 */
final class Posture {

    /** Faster than this one does not rest, m/s: feet are set anew. */
    private static final double RESTS = 0.7;

    private static final int LONGEST_TICKS = UniformClock.ticks(1.2);

    private Posture() {}

    /**
     * Width of the stance over that of the shoulders, the middle of what was seen; empty where nothing was.
     *
     * @param from a stretch that counts whether he rests or not
     * @param to its end
     */
    static OptionalDouble stance(PlayerPath s, int from, int to) {
        double[] seen = IntStream.rangeClosed(restsFrom(s, from), to)
                .filter(i -> s.seen(i) && !Double.isNaN(s.stance(i)))
                .mapToDouble(s::stance)
                .sorted()
                .toArray();
        return seen.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(middle(seen));
    }

    /** Where his front points, radians from the x axis towards y; empty where it was not seen or all ways cancel out. */
    static OptionalDouble facing(PlayerPath s, int from, int to) {
        int[] seen = IntStream.rangeClosed(restsFrom(s, from), to)
                .filter(i -> s.seen(i) && !Double.isNaN(s.facing(i)))
                .toArray();
        double sin = Arrays.stream(seen).mapToDouble(i -> Math.sin(s.facing(i))).sum();
        double cos = Arrays.stream(seen).mapToDouble(i -> Math.cos(s.facing(i))).sum();
        return Math.hypot(sin, cos) < 1e-9 ? OptionalDouble.empty() : OptionalDouble.of(Math.atan2(sin, cos));
    }

    private static int restsFrom(PlayerPath s, int at) {
        int from = at;
        while (from > Math.max(0, at - LONGEST_TICKS) && s.seen(from - 1) && s.speed(from - 1) <= RESTS) {
            from--;
        }
        return from;
    }

    private static double middle(double[] sorted) {
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
