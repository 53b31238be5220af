package floorgauge.events.spacing;

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
import floorgauge.events.standards.Standards;
import floorgauge.events.statistics.Normal;
import floorgauge.events.view.PlayView;
import floorgauge.events.words.FindingDraft;
import floorgauge.events.words.Words;
import java.util.ArrayList;
import java.util.List;

/**
 * Flags two attackers who stay nearer than the crowded distance for longer than the crowded time, in the half under attack and
 * outside an action: who comes up the court, or has just won the ball among those he guarded, is not spaced for an attack yet.
 */
public final class CrowdedFloor {

    private final Play play;
    private final Standards standards;
    private final ActionSpans actions;
    private final double distance;
    private final int ticks;
    private final SpacingSpan span;

    /** @param span where spacing counts */
    public CrowdedFloor(PlayView view, ActionSpans actions, SpacingSpan span) {
        this.play = view.play();
        this.standards = view.standards();
        this.actions = actions;
        this.span = span;
        this.distance = standards.of(Setting.SPACING_CROWDED_DISTANCE);
        this.ticks = UniformClock.ticks(standards.of(Setting.SPACING_CROWDED_TIME));
    }

    public List<Finding> find() {
        List<Finding> found = new ArrayList<>();
        List<PlayerPath> attackers = play.attackers();
        for (int a = 0; a < attackers.size(); a++) {
            for (int b = a + 1; b < attackers.size(); b++) {
                find(attackers.get(a), attackers.get(b), found);
            }
        }
        return found;
    }

    private void find(PlayerPath a, PlayerPath b, List<Finding> found) {
        int i = span.from();
        while (i < Math.min(span.to(), play.coreTo())) {
            if (!counts(a, b, i)) {
                i++;
                continue;
            }
            int end = i;
            while (end < span.to() && counts(a, b, end)) {
                end++;
            }
            if (end - i > ticks) {
                flag(a, b, i, end - 1, found);
            }
            i = end;
        }
    }

    private boolean counts(PlayerPath a, PlayerPath b, int i) {
        return a.seen(i)
                && b.seen(i)
                && AttackGeometry.inFrontCourt(a.x(i))
                && AttackGeometry.inFrontCourt(b.x(i))
                && a.distanceTo(b, i) < distance
                && !actions.at(i, a, b);
    }

    private void flag(PlayerPath a, PlayerPath b, int from, int to, List<Finding> found) {
        int nearest = from;
        double sum = 0;
        double error = 0;
        for (int i = from; i <= to; i++) {
            nearest = a.distanceTo(b, i) < a.distanceTo(b, nearest) ? i : nearest;
            sum += a.distanceTo(b, i);
            error += a.distanceError(b, i);
        }
        int count = to - from + 1;
        Figure mean = Figure.of("distance between attackers", sum / count, error / count, Unit.METRES)
                .against(new Threshold(Setting.SPACING_CROWDED_DISTANCE.key(), distance, Threshold.Side.AT_LEAST));
        double seconds = count / (double) UniformClock.RATE_HERTZ;
        double secondsError = Lasting.error(error / count);
        double longer = 1 - Normal.atMost(standards.of(Setting.SPACING_CROWDED_TIME), seconds, secondsError);
        double probability = probability(a, b, from, to) * longer;
        if (probability < standards.of(Setting.FLAG_PROBABILITY)) {
            return;
        }
        Figure lasting = Figure.of("duration", seconds, secondsError, Unit.SECONDS)
                .against(new Threshold(
                        Setting.SPACING_CROWDED_TIME.key(),
                        standards.of(Setting.SPACING_CROWDED_TIME),
                        Threshold.Side.AT_MOST));
        Figure least = Figure.of("least distance", a.distanceTo(b, nearest), a.distanceError(b, nearest), Unit.METRES);
        found.add(new FindingDraft(FindingKind.CROWDED_FLOOR, "crowded floor", play.time(from), play.time(to))
                .role(Role.ATTACKER, a)
                .role(Role.ATTACKER, b)
                .figure(mean)
                .figure(lasting)
                .figure(least)
                .probability(probability)
                .severity((distance - sum / count) / distance * Math.min(1, seconds / 3) + 0.2, lasting)
                .sentence(Words.player(a.trackId()) + " and " + Words.player(b.trackId()) + " stand "
                        + Words.of(mean) + " apart for " + Words.seconds(seconds) + "; the standard is at least "
                        + Words.metres(distance) + " (" + Words.sure(probability) + ").")
                .frame(play.time(from), "they come within " + Words.metres(distance))
                .frame(play.time(nearest), "nearest")
                .frame(play.time(to), "they part")
                .tick(play.time(from), secondsError, "crowded")
                .tick(play.time(to), secondsError, "apart")
                .mark(new Mark.Distance(play.time(nearest), a.trackId(), b.trackId(), least))
                .mark(new Mark.Delay(play.time(from), play.time(to), lasting))
                .build());
    }

    private double probability(PlayerPath a, PlayerPath b, int from, int to) {
        return Lasting.probability(from, to, ticks, i -> a.within(distance, b, i) * (1 - actions.doubt(i, a, b)));
    }
}
