package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.view.PlayView;

/**
 * How likely it is that a passing of two team-mates is a screen: S came to D of his own motion or stands in D's way, is slow
 * when U goes by, and U goes by near enough.
 */
final class ScreenLikelihood {

    private static final int AT_PASS_TICKS = UniformClock.ticks(0.2);
    private static final int APPROACH_TICKS = UniformClock.ticks(3.5);
    private static final double IN_THE_WAY_GAP_METRES = 0.25;

    private final double candidateDistance;

    ScreenLikelihood(PlayView view) {
        this.candidateDistance = view.standards().of(Setting.SCREEN_CANDIDATE_DISTANCE);
    }

    double of(ScreenCandidate c, int moment, double contactProbability) {
        double approach = logistic((approach(c, Math.min(moment, c.pass())) - 0.6) / 0.15);
        double inTheWay = Math.max(contactProbability, near(c, moment));
        double speed = ScreenMeter.meanSpeed(
                        c.screener(), c.pass() - AT_PASS_TICKS, Math.min(moment, c.pass()) + 1)
                .value();
        double slow = logistic((1.9 - speed) / 0.2);
        double close = c.user().within(candidateDistance, c.screener(), c.pass());
        return (1 - (1 - approach) * (1 - inTheWay)) * slow * close;
    }

    private static double near(ScreenCandidate c, int moment) {
        return c.screener().seen(moment) && c.userDefender().seen(moment)
                ? c.screener()
                        .within(
                                IN_THE_WAY_GAP_METRES + 2 * ContactMeter.BODY_RADIUS_METRES,
                                c.userDefender(),
                                moment)
                : 0;
    }

    /** How far S's own motion brought him nearer to where D then was, metres. */
    private static double approach(ScreenCandidate c, int until) {
        PlayerPath s = c.screener();
        PlayerPath d = c.userDefender();
        double best = 0;
        double sum = 0;
        for (int i = until; i >= Math.max(0, until - APPROACH_TICKS); i--) {
            if (!s.seen(i) || !d.seen(i)) {
                break;
            }
            double distance = Math.max(1e-6, s.distanceTo(d, i));
            double closing = (s.vx(i) * (d.x(i) - s.x(i)) + s.vy(i) * (d.y(i) - s.y(i))) / distance;
            sum += closing / UniformClock.RATE_HERTZ;
            best = Math.max(best, sum);
        }
        return best;
    }

    private static double logistic(double value) {
        return 1 / (1 + Math.exp(-value));
    }
}
