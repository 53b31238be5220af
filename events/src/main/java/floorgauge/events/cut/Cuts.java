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
    private static final double HAS_BALL = 0.5;
    private static final double CURL_RADIANS = Math.toRadians(60);
    private static final double FADES_METRES = 0.5;
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
            while (player.seen(end) && player.speed(end) > speed && isOffBall(view, player, end)) {
                end++;
            }
            if (end - i >= least) {
                Cut cut = new Cut(
                        player, start(player, i), i, end - 1, fastest(player, i, end), name(play, player, i, end - 1));
                if (play.inCore(i) && cut.displacement() >= standards.of(Setting.CUT_DISTANCE)) {
                    cuts.add(cut);
                }
            }
            i = Math.max(end, i) + 1;
        }
    }

    /** Without a ball track who has it is too unsure to say that a run is not a dribble. */
    private static boolean isOffBall(PlayView view, PlayerPath player, int i) {
        return !view.control().ballSeen() || view.control().probability(player, i) < HAS_BALL;
    }

    /** The last instant before a run at which the player was at a walk. */
    public static int start(PlayerPath player, int fast) {
        int i = fast;
        while (player.seen(i - 1) && player.speed(i) > LEAVES_SPEED) {
            i--;
        }
        return i;
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
        double turn = Math.abs(Math.atan2(
                player.vx(start) * player.vy(end) - player.vy(start) * player.vx(end),
                player.vx(start) * player.vx(end) + player.vy(start) * player.vy(end)));
        double rimStart = g.rimDistance(player.x(start), player.y(start));
        double rimEnd = g.rimDistance(player.x(end), player.y(end));
        if (turn > CURL_RADIANS) {
            return rimEnd > rimStart + FADES_METRES ? "fade" : "curl";
        }
        return rimEnd < AT_RIM_METRES && rimStart > g.arcRadius() - 1.5 ? "backdoor" : "straight";
    }
}
