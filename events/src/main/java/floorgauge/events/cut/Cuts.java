package floorgauge.events.cut;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.AttackGeometry;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.view.PlayView;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Finds the cuts of a play: above the cut speed for the cut time, over the cut distance, without the ball. */
public final class Cuts {

    private static final double LEAVES_SPEED = 1.0;
    private static final int RISE_TICKS = UniformClock.ticks(0.2);
    private static final int MOST_BACK_TICKS = UniformClock.ticks(0.4);
    private static final double LEAST_GAIN = 0.04;
    private static final double HAS_BALL = 0.5;
    private static final double CURL_RADIANS = Math.toRadians(50);
    private static final double AT_RIM_METRES = 3;

    private Cuts() {}

    /** In order of start. */
    public static List<Cut> of(PlayView view) {
        List<Cut> cuts = new ArrayList<>();
        for (PlayerPath player : view.play().attackers()) {
            find(view, player, cuts);
        }
        cuts.sort(Comparator.comparingInt(Cut::start)
                .thenComparingInt(c -> c.cutter().trackId()));
        return cuts;
    }

    private static void find(PlayView view, PlayerPath player, List<Cut> cuts) {
        Play play = view.play();
        Standards standards = view.standards();
        double speed = standards.of(Setting.CUT_SPEED);
        int least = UniformClock.ticks(standards.of(Setting.CUT_TIME));
        int i = 0;
        while (i < play.size()) {
            int end = i;
            while (player.seen(end) && player.speed(end) > speed) {
                end++;
            }
            if (end - i >= least) {
                int start = start(player, i);
                boolean offBall = view.control().probability(player, i) < HAS_BALL;
                Cut cut = new Cut(player, start, end - 1, fastest(player, i, end), name(play, player, start, end - 1));
                if (offBall && play.inCore(start) && cut.displacement() >= standards.of(Setting.CUT_DISTANCE)) {
                    cuts.add(cut);
                }
            }
            i = Math.max(end, i) + 1;
        }
    }

    /** From rest: where the rise of the speed about 1 m/s, drawn back as a line, starts from 0. */
    private static int start(PlayerPath player, int fast) {
        int i = fast;
        while (player.seen(i - 1) && player.speed(i - 1) > LEAVES_SPEED) {
            i--;
        }
        double gain = (player.speed(Math.min(i + RISE_TICKS, fast)) - player.speed(i))
                / Math.max(1, Math.min(RISE_TICKS, fast - i));
        int back = gain > LEAST_GAIN ? (int) Math.round(player.speed(i) / gain) : 0;
        int start = i;
        while (start > i - Math.min(back, MOST_BACK_TICKS) && player.seen(start - 1)) {
            start--;
        }
        return start;
    }

    private static int fastest(PlayerPath player, int from, int to) {
        int best = from;
        for (int i = from; i < to; i++) {
            best = player.speed(i) > player.speed(best) ? i : best;
        }
        return best;
    }

    private static String name(Play play, PlayerPath player, int start, int end) {
        AttackGeometry g = play.geometry();
        int middle = (start + end) / 2;
        double in = Math.atan2(player.y(middle) - player.y(start), player.x(middle) - player.x(start));
        double out = Math.atan2(player.y(end) - player.y(middle), player.x(end) - player.x(middle));
        double turn = Math.abs(Math.IEEEremainder(out - in, 2 * Math.PI));
        double rimStart = g.rimDistance(player.x(start), player.y(start));
        double rimEnd = g.rimDistance(player.x(end), player.y(end));
        if (turn > CURL_RADIANS && rimEnd < rimStart) {
            return "curl";
        }
        if (rimEnd < AT_RIM_METRES && rimStart > g.arcRadius() - 1) {
            return "backdoor";
        }
        return turn > CURL_RADIANS ? "fade" : "straight";
    }
}
