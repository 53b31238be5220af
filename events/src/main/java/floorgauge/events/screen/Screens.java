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

    private static final int SAME_SCREEN_TICKS = UniformClock.ticks(1.2);

    private Screens() {}

    /** The screens of a play's core, in order of time. */
    public static List<Screen> of(PlayView view) {
        ScreenMeter meter = new ScreenMeter(view);
        List<Screen> measured = new ScreenFinder(view)
                .find().stream()
                        .map(meter::measure)
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
        return List.copyOf(kept);
    }

    /** One pair counts once, whichever of the two was taken for the screener; so does one screen against one defender. */
    private static boolean same(Screen a, Screen b) {
        boolean near = Math.abs(a.pass() - b.pass()) <= SAME_SCREEN_TICKS;
        boolean samePair = a.screener() == b.screener() && a.user() == b.user();
        boolean turned = a.screener() == b.user() && a.user() == b.screener();
        return near && (samePair || turned);
    }
}
