package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.view.PlayView;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Finds and measures the screens of a play. */
public final class Screens {

    /** Below this a candidate is two team-mates passing by. */
    public static final double LEAST_PROBABILITY = 0.5;

    /** Who comes by the same screener again so soon has not gone away for another screen. */
    private static final int SAME_SCREEN_TICKS = UniformClock.ticks(2.0);

    private static final int AGAIN_TICKS = UniformClock.ticks(4.0);

    private Screens() {}

    /** Every passing of two team-mates in a play's core that may be a screen, in no order. */
    public static List<Screen> possible(PlayView view) {
        ScreenMeter meter = new ScreenMeter(view);
        return new ScreenFinder(view).find().stream().map(meter::measure).toList();
    }

    /** The screens among those that are possible, in order of time. */
    public static List<Screen> likely(List<Screen> possible) {
        List<Screen> measured = possible.stream()
                .filter(s -> s.probability() >= LEAST_PROBABILITY)
                .sorted(Comparator.comparingDouble(Screen::probability)
                        .reversed()
                        .thenComparingInt(Screen::pass)
                        .thenComparingInt(s -> s.screener().trackId()))
                .toList();
        List<Screen> kept = new ArrayList<>();
        for (Screen screen : measured) {
            if (kept.stream().noneMatch(k -> same(k, screen))) {
                kept.add(screen);
            }
        }
        kept.sort(Comparator.comparingInt(Screen::moment)
                .thenComparingInt(s -> s.screener().trackId())
                .thenComparingInt(s -> s.user().trackId()));
        return kept.stream().map(s -> withNext(s, kept)).toList();
    }

    /**
     * One pair counts once, whichever of the two was taken for the screener. A screener who rolls runs past his user, who is no
     * screener by that.
     */
    private static boolean same(Screen a, Screen b) {
        boolean near = Math.abs(a.pass() - b.pass()) <= SAME_SCREEN_TICKS;
        boolean turned = a.screener() == b.user() && a.user() == b.screener();
        return near && (samePair(a, b) || turned);
    }

    private static boolean samePair(Screen a, Screen b) {
        return a.screener() == b.screener() && a.user() == b.user();
    }

    /** A screener who soon screens for the same user again has that for his next act. */
    private static Screen withNext(Screen screen, List<Screen> all) {
        boolean again = all.stream()
                .anyMatch(s ->
                        samePair(s, screen) && s.pass() > screen.pass() && s.pass() - screen.pass() <= AGAIN_TICKS);
        return again ? screen.then(NextAct.RESCREEN) : screen;
    }
}
