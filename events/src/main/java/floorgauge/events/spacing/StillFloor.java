package floorgauge.events.spacing;

import static floorgauge.events.words.Words.player;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.Threshold;
import floorgauge.events.finding.Unit;
import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.AttackGeometry;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.statistics.Normal;
import floorgauge.events.view.PlayView;
import floorgauge.events.words.FindingDraft;
import floorgauge.events.words.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * Flags a collapsed floor, for five attackers, and a stalled ball, where the ball was tracked; both in the half under attack, neither
 * while an action passes by. A screener on his way leaves the mean speed of the five under 0.8 m/s, and a ball that waits for him is not stalled.
 */
public final class StillFloor {

    private static final int FULL_TEAM = 5;

    private final PlayView view;
    private final Play play;
    private final ActionSpans actions;
    private final SpacingSpan span;

    /** @param span where spacing counts */
    public StillFloor(PlayView view, ActionSpans actions, SpacingSpan span) {
        this.view = view;
        this.play = view.play();
        this.actions = actions;
        this.span = span;
    }

    public List<Finding> find() {
        List<Finding> found = new ArrayList<>();
        stretches(this::isCollapsed, Setting.SPACING_COLLAPSED_TIME)
                .forEach(s -> collapsed(s[0], s[1]).ifPresent(found::add));
        if (view.control().ballSeen()) {
            for (PlayerPath handler : play.attackers()) {
                stretches(i -> isStalled(handler, i), Setting.SPACING_STALLED_TIME)
                        .forEach(s -> found.add(stalled(handler, s[0], s[1])));
            }
        }
        return found;
    }

    private List<int[]> stretches(IntPredicate holds, Setting lasting) {
        int least = UniformClock.ticks(view.standards().of(lasting));
        List<int[]> stretches = new ArrayList<>();
        int i = span.from();
        while (i < Math.min(span.to(), play.coreTo())) {
            int end = i;
            while (end < span.to() && holds.test(end)) {
                end++;
            }
            if (end - i > least) {
                stretches.add(new int[] {i, end - 1});
            }
            i = Math.max(end, i + 1);
        }
        return stretches;
    }

    private List<PlayerPath> seen(int i) {
        return play.attackers().stream().filter(p -> p.seen(i)).toList();
    }

    private boolean isCollapsed(int i) {
        List<PlayerPath> seen = seen(i);
        return seen.size() == FULL_TEAM
                && seen.stream().allMatch(p -> AttackGeometry.inFrontCourt(p.x(i)))
                && !actions.at(i)
                && ConvexHull.area(SpacingMeter.points(seen, i))
                        < view.standards().of(Setting.SPACING_COLLAPSED_AREA);
    }

    private Optional<Finding> collapsed(int from, int to) {
        double limit = view.standards().of(Setting.SPACING_COLLAPSED_AREA);
        int smallest = from;
        for (int i = from; i <= to; i++) {
            smallest = area(i) < area(smallest) ? i : smallest;
        }
        double probability = Lasting.probability(
                from,
                to,
                UniformClock.ticks(view.standards().of(Setting.SPACING_COLLAPSED_TIME)),
                i -> Normal.atMost(limit, area(i), areaError(i)) * (1 - actions.doubt(i)));
        int narrowest = smallest;
        double error = Lasting.error(seen(narrowest).stream()
                .mapToDouble(p -> p.covariance(narrowest).standardErrorMetres())
                .max()
                .orElse(0));
        double least = view.standards().of(Setting.SPACING_COLLAPSED_TIME);
        probability *= 1 - Normal.atMost(least, (to - from + 1) / (double) UniformClock.RATE_HERTZ, error);
        if (probability < view.standards().of(Setting.FLAG_PROBABILITY)) {
            return Optional.empty();
        }
        Figure hull = Figure.of("least hull area", area(smallest), areaError(smallest), Unit.SQUARE_METRES)
                .against(new Threshold(Setting.SPACING_COLLAPSED_AREA.key(), limit, Threshold.Side.AT_LEAST));
        Figure lasting = duration(from, to, error, Setting.SPACING_COLLAPSED_TIME);
        List<PlayerPath> five = seen(smallest);
        List<Integer> corners = Arrays.stream(ConvexHull.corners(SpacingMeter.points(five, smallest)))
                .mapToObj(k -> five.get(k).trackId())
                .toList();
        FindingDraft draft = new FindingDraft(
                        FindingKind.COLLAPSED_FLOOR, "collapsed floor", play.time(from), play.time(to))
                .figure(hull)
                .figure(lasting)
                .probability(probability)
                .severity((limit - area(smallest)) / limit + 0.1, lasting)
                .sentence("The five span " + Words.of(hull) + " at the least and too little for "
                        + Words.of(lasting) + "; the standard is at least " + Math.round(limit) + " m² ("
                        + Words.sure(probability) + ").")
                .frame(play.time(from), "the floor closes")
                .frame(play.time(smallest), "smallest")
                .frame(play.time(to), "the floor opens")
                .mark(new Mark.Area(play.time(smallest), corners, hull));
        five.forEach(p -> draft.role(Role.ATTACKER, p));
        return Optional.of(draft.build());
    }

    private double area(int i) {
        return ConvexHull.area(SpacingMeter.points(seen(i), i));
    }

    /** First order: the area moves by half the chord across a corner for each metre of the corner. */
    private double areaError(int i) {
        List<PlayerPath> seen = seen(i);
        double[][] points = SpacingMeter.points(seen, i);
        int[] corners = ConvexHull.corners(points);
        double variance = 0;
        for (int k = 0; k < corners.length; k++) {
            double[] before = points[corners[(k + corners.length - 1) % corners.length]];
            double[] after = points[corners[(k + 1) % corners.length]];
            double dx = after[0] - before[0];
            double dy = after[1] - before[1];
            if (Math.hypot(dx, dy) > 1e-9) {
                double across = seen.get(corners[k]).covariance(i).varianceAlong(-dy, dx);
                variance += across * (dx * dx + dy * dy) / 4;
            }
        }
        return Math.sqrt(variance);
    }

    private boolean isStalled(PlayerPath handler, int i) {
        return view.control().controller(i).map(c -> c == handler).orElse(false)
                && AttackGeometry.inFrontCourt(handler.x(i))
                && !actions.at(i)
                && meanSpeed(i) < view.standards().of(Setting.SPACING_STALLED_SPEED);
    }

    private double meanSpeed(int i) {
        return seen(i).stream().mapToDouble(p -> p.speed(i)).average().orElse(Double.POSITIVE_INFINITY);
    }

    private Finding stalled(PlayerPath handler, int from, int to) {
        double sum = 0;
        double error = 0;
        for (int i = from; i <= to; i++) {
            int k = i;
            sum += meanSpeed(i);
            error +=
                    seen(i).stream().mapToDouble(p -> p.speedError(k)).average().orElse(0);
        }
        int count = to - from + 1;
        Figure speed = Figure.of("mean speed", sum / count, error / count, Unit.METRES_PER_SECOND)
                .against(new Threshold(
                        Setting.SPACING_STALLED_SPEED.key(),
                        view.standards().of(Setting.SPACING_STALLED_SPEED),
                        Threshold.Side.AT_LEAST));
        Figure held = duration(from, to, 0.04, Setting.SPACING_STALLED_TIME);
        double probability = Normal.atMost(
                view.standards().of(Setting.SPACING_STALLED_SPEED),
                speed.value(),
                speed.standardError().orElseThrow());
        return new FindingDraft(FindingKind.STALLED_BALL, "stalled ball", play.time(from), play.time(to))
                .role(Role.BALL_HANDLER, handler)
                .figure(held)
                .figure(speed)
                .probability(probability)
                .severity(held.value() / 8, held)
                .sentence(player(handler.trackId()) + " holds the ball for " + Words.of(held)
                        + " while the attackers average " + Words.of(speed) + " (" + Words.sure(probability) + ").")
                .frame(play.time(from), "the ball stops")
                .frame(play.time((from + to) / 2), "held")
                .frame(play.time(to), "it goes on")
                .mark(new Mark.Delay(play.time(from), play.time(to), held))
                .build();
    }

    private Figure duration(int from, int to, double error, Setting limit) {
        return Figure.of("duration", (to - from + 1) / (double) UniformClock.RATE_HERTZ, error, Unit.SECONDS)
                .against(new Threshold(limit.key(), view.standards().of(limit), Threshold.Side.AT_MOST));
    }
}
