package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Measures the parts of a screen's quality about its moment t0. */
final class QualityMeter {

    private static final int ABOUT_TICKS = UniformClock.ticks(0.16);
    private static final double FULL_BASE = 1.5;
    private static final double NO_BASE = 1.0;
    private static final double LEAST_CHASE_SPEED = 0.5;

    private final Standards standards;

    QualityMeter(Standards standards) {
        this.standards = standards;
    }

    ScreenQuality measure(
            ScreenCandidate c, int moment, double contactProbability, Estimate brush, Optional<Estimate> gained) {
        Map<QualityPart, Double> parts = new EnumMap<>(QualityPart.class);
        PlayerPath s = c.screener();
        parts.put(QualityPart.CONTACT, contactProbability);
        parts.put(QualityPart.SET, slowShare(s, moment));
        base(s, moment).ifPresent(v -> parts.put(QualityPart.BASE, v));
        angle(s, c.userDefender(), moment).ifPresent(v -> parts.put(QualityPart.ANGLE, v));
        parts.put(QualityPart.BRUSH, brush(brush.value()));
        gained.ifPresent(g -> parts.put(QualityPart.EFFECT, effect(g.value())));
        return new ScreenQuality(parts);
    }

    /** Score of the distance of user and screener at the passing, metres. */
    double brush(double metres) {
        double full = standards.of(Setting.SCREEN_BRUSH_FULL);
        double none = standards.of(Setting.SCREEN_BRUSH_NONE);
        return unit((none - metres) / Math.max(1e-9, none - full));
    }

    /** Score of the separation gained, metres. */
    double effect(double metres) {
        return unit(metres / standards.of(Setting.SCREEN_FULL_SEPARATION));
    }

    private double slowShare(PlayerPath s, int moment) {
        double sum = 0;
        int count = 0;
        for (int i = moment - UniformClock.ticks(standards.of(Setting.SCREEN_SET_TIME)); i <= moment; i++) {
            if (s.seen(i)) {
                sum += s.slowerThan(standards.of(Setting.SCREEN_SET_SPEED), i);
                count++;
            }
        }
        return count == 0 ? 1 : unit(sum / count);
    }

    private static OptionalDouble base(PlayerPath s, int moment) {
        OptionalDouble stance = Posture.stance(s, moment - ABOUT_TICKS, moment + ABOUT_TICKS);
        return stance.isEmpty()
                ? stance
                : OptionalDouble.of(unit((stance.getAsDouble() - NO_BASE) / (FULL_BASE - NO_BASE)));
    }

    /** Against D's way over the third of a second about the screen; empty where he stood or S's facing was not seen. */
    private static OptionalDouble angle(PlayerPath s, PlayerPath d, int moment) {
        int from = moment - ABOUT_TICKS;
        int to = moment + ABOUT_TICKS;
        if (!d.seen(from) || !d.seen(to)) {
            return OptionalDouble.empty();
        }
        double dx = d.x(to) - d.x(from);
        double dy = d.y(to) - d.y(from);
        double seconds = (to - from) / (double) UniformClock.RATE_HERTZ;
        OptionalDouble facing = Posture.facing(s, from, to);
        if (Math.hypot(dx, dy) < LEAST_CHASE_SPEED * seconds || facing.isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(unit(Math.abs(Math.cos(facing.getAsDouble() - Math.atan2(dy, dx)))));
    }

    private static double unit(double value) {
        return Math.max(0, Math.min(1, value));
    }
}
