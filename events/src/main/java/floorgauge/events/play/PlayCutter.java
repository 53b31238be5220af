package floorgauge.events.play;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Cuts ticks into stretches in which one attack goes on, each handed on with a margin before and after so that what happens
 * at a cut is measured whole, and counted once: in the stretch whose core holds its moment.
 */
final class PlayCutter {

    /**
     * A stretch of play.
     *
     * @param ticks margin, core, margin
     * @param coreFrom index of the core's first tick
     * @param coreTo index after the core's last tick
     * @param attack who attacks in the core
     * @param attackProbability mean over the core
     * @param reason why it ended
     */
    record Stretch(
            List<FloorTick> ticks, int coreFrom, int coreTo, Attack attack, double attackProbability, String reason) {}

    private static final int MARGIN_TICKS = UniformClock.ticks(3);
    private static final int EMPTY_TICKS = UniformClock.ticks(2);

    private final int leastTicks;
    private final int mostTicks;
    private final Consumer<Stretch> out;
    private final List<AttackTracker.Judged> history = new ArrayList<>();
    private int start;
    private int empty;
    private int pendingStart;
    private int pendingEnd = -1;
    private String pendingReason = "";

    PlayCutter(Standards standards, Consumer<Stretch> out) {
        this.leastTicks = UniformClock.ticks(standards.of(Setting.POSSESSION_LEAST_TIME));
        this.mostTicks = UniformClock.ticks(standards.of(Setting.POSSESSION_MOST_TIME));
        this.out = out;
    }

    void accept(AttackTracker.Judged judged) {
        history.add(judged);
        int now = history.size() - 1;
        if (pendingEnd >= 0 && now - pendingEnd >= MARGIN_TICKS) {
            giveOut();
        }
        boolean nobody = judged.tick().players().stream().noneMatch(p -> AttackEvidence.isPlayer(p.team()));
        empty = nobody ? empty + 1 : 0;
        if (nobody && start == history.size() - 1) {
            start = history.size();
            trim();
            return;
        }
        now = history.size() - 1;
        if (now > start && history.get(now).attack() != history.get(now - 1).attack()) {
            end(now, "change of attack");
        } else if (empty >= EMPTY_TICKS) {
            end(now - empty + 1, "stoppage");
            start = history.size();
        } else if (now - start >= mostTicks) {
            end(now, "still going on");
        }
    }

    void finish() {
        if (pendingEnd >= 0) {
            giveOut();
        }
        if (history.size() > start) {
            pendingEnd = history.size();
            pendingReason = "end of film";
            pendingStart = start;
            giveOut();
        }
    }

    private void end(int at, String reason) {
        // Giving out forgets the oldest ticks, which moves every index.
        int ago = history.size() - at;
        if (pendingEnd >= 0) {
            giveOut();
        }
        pendingStart = start;
        pendingEnd = Math.max(history.size() - ago, start);
        pendingReason = reason;
        start = pendingEnd;
    }

    private void giveOut() {
        int from = Math.max(0, pendingStart - MARGIN_TICKS);
        int to = Math.min(history.size(), pendingEnd + MARGIN_TICKS);
        if (pendingEnd - pendingStart >= leastTicks) {
            List<FloorTick> ticks = history.subList(from, to).stream()
                    .map(AttackTracker.Judged::tick)
                    .toList();
            double probability = history.subList(pendingStart, pendingEnd).stream()
                    .mapToDouble(AttackTracker.Judged::probability)
                    .average()
                    .orElseThrow();
            out.accept(new Stretch(
                    ticks,
                    pendingStart - from,
                    pendingEnd - from,
                    history.get(pendingStart).attack(),
                    Math.min(1, probability),
                    pendingReason));
        }
        pendingEnd = -1;
        trim();
    }

    /** Forgets what lies more than a margin before the running stretch. */
    private void trim() {
        int drop = Math.min(start, history.size()) - MARGIN_TICKS;
        if (drop > 0 && pendingEnd < 0) {
            history.subList(0, drop).clear();
            start -= drop;
        }
    }
}
