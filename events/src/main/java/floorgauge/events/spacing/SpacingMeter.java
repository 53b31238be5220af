package floorgauge.events.spacing;

import floorgauge.events.control.BallControl;
import floorgauge.events.finding.SpacingSample;
import floorgauge.events.play.AttackGeometry;
import floorgauge.events.play.BallPath;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.view.PlayView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Measures the spacing of the attackers at every index of a play. */
public final class SpacingMeter {

    private final PlayView view;
    private final Play play;
    private final ActionSpans actions;

    public SpacingMeter(PlayView view, ActionSpans actions) {
        this.view = view;
        this.play = view.play();
        this.actions = actions;
    }

    /** A sample for every index of the core. */
    public List<SpacingSample> series() {
        List<SpacingSample> samples = new ArrayList<>(play.coreTo() - play.coreFrom());
        for (int i = play.coreFrom(); i < play.coreTo(); i++) {
            samples.add(at(i));
        }
        return samples;
    }

    private SpacingSample at(int i) {
        List<PlayerPath> seen = play.attackers().stream().filter(p -> p.seen(i)).toList();
        double least = Double.POSITIVE_INFINITY;
        double leastError = 0;
        double sum = 0;
        for (PlayerPath a : seen) {
            double nearest = Double.POSITIVE_INFINITY;
            for (PlayerPath b : seen) {
                if (a == b) {
                    continue;
                }
                double distance = a.distanceTo(b, i);
                nearest = Math.min(nearest, distance);
                if (distance < least) {
                    least = distance;
                    leastError = a.distanceError(b, i);
                }
            }
            sum += nearest;
        }
        boolean pairs = seen.size() >= 2;
        return new SpacingSample(
                play.time(i),
                seen.size(),
                pairs ? OptionalDouble.of(least) : OptionalDouble.empty(),
                pairs ? OptionalDouble.of(leastError) : OptionalDouble.empty(),
                pairs ? OptionalDouble.of(sum / seen.size()) : OptionalDouble.empty(),
                ConvexHull.area(points(seen, i)),
                (int) seen.stream()
                        .filter(p -> play.geometry().inLane(p.x(i), p.y(i)))
                        .count(),
                corners(seen, i),
                drivingLane(i),
                helpDistance(i),
                actions.at(i));
    }

    static double[][] points(List<PlayerPath> players, int i) {
        double[][] points = new double[players.size()][];
        for (int k = 0; k < points.length; k++) {
            points[k] = new double[] {players.get(k).x(i), players.get(k).y(i)};
        }
        return points;
    }

    private int corners(List<PlayerPath> seen, int i) {
        AttackGeometry geometry = play.geometry();
        double radius = view.standards().of(Setting.SPACING_CORNER_RADIUS);
        int filled = 0;
        for (int side = -1; side <= 1; side += 2) {
            int s = side;
            if (seen.stream().anyMatch(p -> geometry.cornerDistance(p.x(i), p.y(i), s) <= radius)) {
                filled++;
            }
        }
        return filled;
    }

    /** Twice the least distance of any player but the one with the ball from the line between ball and rim. */
    private OptionalDouble drivingLane(int i) {
        Optional<PlayerPath> handler = handler(i);
        if (handler.isEmpty()) {
            return OptionalDouble.empty();
        }
        double least = Double.POSITIVE_INFINITY;
        for (List<PlayerPath> side : List.of(play.attackers(), play.defenders())) {
            for (PlayerPath player : side) {
                if (player != handler.get() && player.seen(i)) {
                    least = Math.min(least, fromDrive(player, handler.get(), i));
                }
            }
        }
        return Double.isInfinite(least) ? OptionalDouble.empty() : OptionalDouble.of(2 * least);
    }

    /** From the drive to the nearest defender who does not guard the ball. */
    private OptionalDouble helpDistance(int i) {
        Optional<PlayerPath> handler = handler(i);
        if (handler.isEmpty()) {
            return OptionalDouble.empty();
        }
        Optional<PlayerPath> onBall = view.matchups().guardOf(handler.get(), i);
        return play.defenders().stream()
                .filter(d -> d.seen(i) && onBall.map(o -> o != d).orElse(true))
                .mapToDouble(d -> fromDrive(d, handler.get(), i))
                .min();
    }

    private Optional<PlayerPath> handler(int i) {
        BallControl control = view.control();
        if (!control.ballSeen() || play.ball().map((BallPath b) -> !b.seen(i)).orElse(true)) {
            return Optional.empty();
        }
        return control.controller(i).filter(p -> p.seen(i) && play.attackers().contains(p));
    }

    private double fromDrive(PlayerPath player, PlayerPath handler, int i) {
        return distanceToSegment(
                player.x(i),
                player.y(i),
                handler.x(i),
                handler.y(i),
                play.geometry().rimX(),
                0);
    }

    static double distanceToSegment(double px, double py, double ax, double ay, double bx, double by) {
        double dx = bx - ax;
        double dy = by - ay;
        double squared = dx * dx + dy * dy;
        double share = squared > 0 ? ((px - ax) * dx + (py - ay) * dy) / squared : 0;
        double held = Math.max(0, Math.min(1, share));
        return Math.hypot(px - ax - held * dx, py - ay - held * dy);
    }
}
