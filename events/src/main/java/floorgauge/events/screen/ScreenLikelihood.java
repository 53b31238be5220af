package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.view.PlayView;
import java.util.OptionalDouble;

/**
 * How likely it is that a passing of two team-mates is a screen. A screener came to his place a short while ago, is near the
 * user's defender and to the user's way, is slower than the user who goes by, and, where his feet were seen and he rests, stands
 * wide.
 *
 * <p>The log-odds are linear in these five; the weights were fitted by logistic regression to scenes of the sample clips'
 * library on its development seeds, exact and with a tracker's errors, against passings that no scenario calls a screen.
 */
final class ScreenLikelihood {

    private static final double INTERCEPT = 0.2;
    private static final double PER_METRE_OF_GAP = -4.2;
    private static final double PER_METRE_COME = 0.5;
    private static final double PER_SPEED_BELOW_USER = 1.5;
    private static final double PER_METRE_FROM_USER = -1.7;
    private static final double PER_SHOULDER_OF_STANCE = 8.0;

    private static final double LEAST_BRUSH_METRES = 0.5;
    private static final double MOST_GAP_METRES = 1.5;
    private static final double MOST_COME_METRES = 2.5;
    private static final double MOST_FASTER = 2.5;
    private static final double LEAST_FASTER = -2;
    private static final double USUAL_STANCE = 1.25;
    private static final double LEAST_STANCE = 0.8;
    private static final double MOST_STANCE = 1.5;
    private static final double RESTS_SPEED = 0.7;
    private static final int COMING_TICKS = UniformClock.ticks(3.5);
    private static final int STANCE_BEFORE_TICKS = UniformClock.ticks(0.24);
    private static final int STANCE_AFTER_TICKS = UniformClock.ticks(0.08);
    private static final int ABOUT_TICKS = UniformClock.ticks(0.12);

    private final double candidateDistance;

    ScreenLikelihood(PlayView view) {
        this.candidateDistance = view.standards().of(Setting.SCREEN_CANDIDATE_DISTANCE);
    }

    double of(ScreenCandidate c, int moment) {
        PlayerPath s = c.screener();
        int pass = c.pass();
        double speed =
                ScreenMeter.meanSpeed(s, pass - ABOUT_TICKS, pass + ABOUT_TICKS).value();
        double faster = ScreenMeter.meanSpeed(c.user(), pass - ABOUT_TICKS, pass + ABOUT_TICKS)
                        .value()
                - speed;
        double odds = INTERCEPT
                + PER_METRE_OF_GAP * gap(c, moment)
                + PER_METRE_COME * Math.min(MOST_COME_METRES, come(s, pass))
                + PER_SPEED_BELOW_USER * Math.max(LEAST_FASTER, Math.min(MOST_FASTER, faster))
                + PER_METRE_FROM_USER * Math.max(LEAST_BRUSH_METRES, c.user().distanceTo(s, pass))
                + PER_SHOULDER_OF_STANCE * wider(s, pass) * logistic((RESTS_SPEED - speed) / 0.1);
        return logistic(odds) * c.user().within(candidateDistance, s, pass);
    }

    private static double gap(ScreenCandidate c, int moment) {
        PlayerPath s = c.screener();
        PlayerPath d = c.userDefender();
        return s.seen(moment) && d.seen(moment)
                ? Math.max(
                        0,
                        Math.min(MOST_GAP_METRES, ContactMeter.gap(s, d, moment).value()))
                : MOST_GAP_METRES;
    }

    /** How far from his place S was up to three and a half seconds before, metres. */
    private static double come(PlayerPath s, int pass) {
        int i = Math.max(0, pass - COMING_TICKS);
        while (i < pass && !s.seen(i)) {
            i++;
        }
        return Math.hypot(s.x(pass) - s.x(i), s.y(pass) - s.y(i));
    }

    /** How much wider than usual S stands, in widths of his shoulders; 0 where it was not seen. */
    private static double wider(PlayerPath s, int pass) {
        OptionalDouble stance = Posture.stance(s, pass - STANCE_BEFORE_TICKS, pass + STANCE_AFTER_TICKS);
        return stance.isEmpty()
                ? 0
                : Math.max(LEAST_STANCE, Math.min(MOST_STANCE, stance.getAsDouble())) - USUAL_STANCE;
    }

    private static double logistic(double value) {
        return 1 / (1 + Math.exp(-value));
    }
}
