package floorgauge.events.cut;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.screen.Screen;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.statistics.Normal;
import java.util.Optional;

/**
 * When a screener came to rest: the start of his last rest up to half a second after the screen. A screener who shuffles into his place is
 * slow long before he rests, and where the error of his speed is as large as the limit of rest nobody can say when he was set; so every
 * moment has its probability. Going back from the last rest, it reaches a moment as surely as he was slow at the fastest instant since: the
 * errors of one rest go together.
 */
final class SetMoment {

    private static final int AFTER_TICKS = UniformClock.ticks(0.5);
    private static final int LONG_AGO_TICKS = UniformClock.ticks(1.5);
    private static final int REST_TICKS = UniformClock.ticks(0.12);
    private static final double UNSURE = 0.7;
    private static final double NEGLIGIBLE = 1e-3;
    private static final double LEAST_ERROR = 1e-3;

    private final int last;
    private final double[] backTo;
    private final double rested;

    /**
     * @param last last index of the rest
     * @param backTo probability that the rest reaches back by as many ticks from {@code last}; falls from 1
     * @param rested that he rested at all
     */
    private SetMoment(int last, double[] backTo, double rested) {
        this.last = last;
        this.backTo = backTo;
        this.rested = rested;
    }

    /** Empty where he had not rested for a second and a half by half a second after the screen. */
    static Optional<SetMoment> of(Screen screen, Play play, Standards standards) {
        PlayerPath s = screen.screener();
        double limit = standards.of(Setting.SCREEN_SET_SPEED);
        int until = play.clamp(Math.max(screen.moment(), screen.pass()) + AFTER_TICKS);
        int earliest = Math.max(REST_TICKS, until - LONG_AGO_TICKS);
        for (int last = until; last >= earliest; last--) {
            if (isRest(s, last, limit)) {
                return Optional.of(new SetMoment(last, backTo(s, last, limit), rested(s, earliest, until, limit)));
            }
        }
        return Optional.empty();
    }

    /** A screener at rest seems to move by the error of his speed. */
    private static boolean isRest(PlayerPath s, int last, double limit) {
        for (int i = last; i > last - REST_TICKS; i--) {
            if (!s.seen(i) || s.speed(i) > limit + UNSURE * s.speedError(i)) {
                return false;
            }
        }
        return true;
    }

    private static double slow(PlayerPath s, int i, double limit) {
        return s.seen(i) ? Normal.atMost(limit, s.speed(i), Math.max(LEAST_ERROR, s.speedError(i))) : 0;
    }

    private static double rested(PlayerPath s, int earliest, int until, double limit) {
        double most = 0;
        for (int last = earliest; last <= until; last++) {
            double least = 1;
            for (int i = last; i > last - REST_TICKS; i--) {
                least = Math.min(least, slow(s, i, limit));
            }
            most = Math.max(most, least);
        }
        return most;
    }

    private static double[] backTo(PlayerPath s, int last, double limit) {
        double[] back = new double[last + 1];
        double least = 1;
        for (int ago = 0; ago <= last && least >= NEGLIGIBLE; ago++) {
            least = ago < REST_TICKS ? 1 : Math.min(least, slow(s, last - ago, limit));
            back[ago] = least;
        }
        return back;
    }

    /** Probability that he rested at all. */
    double rested() {
        return rested;
    }

    /** The index by which he was set as likely as not. */
    int median() {
        int ago = 0;
        while (ago + 1 < backTo.length && backTo[ago + 1] >= 0.5) {
            ago++;
        }
        return last - ago;
    }

    /** Standard deviation of the moment, seconds. */
    double error() {
        double mean = 0;
        double square = 0;
        for (int ago = 0; ago < backTo.length; ago++) {
            mean += weight(ago) * ago;
            square += weight(ago) * ago * ago;
        }
        return Math.sqrt(Math.max(0, square - mean * mean)) / UniformClock.RATE_HERTZ;
    }

    private double weight(int ago) {
        return backTo[ago] - (ago + 1 < backTo.length ? backTo[ago + 1] : 0);
    }

    /**
     * Probability that somebody who left at an index did so at most so long after the set.
     *
     * @param seconds below 0 for before the set
     * @param error standard error of when he left, seconds
     */
    double leftAtMost(double seconds, int leaves, double error) {
        double sum = 0;
        for (int ago = 0; ago < backTo.length; ago++) {
            double after = (leaves - (last - ago)) / (double) UniformClock.RATE_HERTZ;
            sum += weight(ago) * Normal.atMost(seconds, after, error);
        }
        return sum;
    }
}
