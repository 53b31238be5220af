package floorgauge.sampleclips.labels.scene;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.sampleclips.labels.LabelledEvent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Screens that belong together: two for one user within 2 s (staggered; double where the screeners are within 1.2 m; an
 * elevator where he runs between them), one whose screener was or becomes a user within 2 s, two down screens within 0.7 s.
 */
final class ChainTruth {

    private static final double TOGETHER_SECONDS = 2;
    private static final double DOUBLE_METRES = 1.2;
    private static final double SIMULTANEOUS_SECONDS = 0.7;

    private final Motion motion;
    private final List<ScreenTruth.Screen> screens;

    ChainTruth(Motion motion, List<ScreenTruth.Screen> screens) {
        this.motion = motion;
        this.screens = screens.stream()
                .sorted(Comparator.comparingInt(ScreenTruth.Screen::passing)
                        .thenComparingInt(ScreenTruth.Screen::screener))
                .toList();
    }

    /** @param kinds of the screens, in the trade's words */
    List<LabelledEvent> events(Function<ScreenTruth.Screen, String> kinds) {
        List<LabelledEvent> events = new ArrayList<>();
        for (int a = 0; a < screens.size(); a++) {
            for (int b = a + 1; b < screens.size(); b++) {
                ScreenTruth.Screen first = screens.get(a);
                ScreenTruth.Screen second = screens.get(b);
                name(first, second, kinds).ifPresent(name -> events.add(chain(name, first, second)));
            }
        }
        return events;
    }

    private Optional<String> name(
            ScreenTruth.Screen first, ScreenTruth.Screen second, Function<ScreenTruth.Screen, String> kinds) {
        double apart = motion.time(second.passing()) - motion.time(first.passing());
        if (apart > TOGETHER_SECONDS) {
            return Optional.empty();
        }
        if (first.user() == second.user() && first.screener() != second.screener()) {
            return Optional.of(sameUser(first, second));
        }
        if (first.user() == second.screener() || first.screener() == second.user()) {
            return Optional.of("screen the screener");
        }
        boolean two = first.user() != second.user() && first.screener() != second.screener();
        boolean down =
                kinds.apply(first).equals("down screen") && kinds.apply(second).equals("down screen");
        return two && down && apart <= SIMULTANEOUS_SECONDS ? Optional.of("simultaneous pin-downs") : Optional.empty();
    }

    private String sameUser(ScreenTruth.Screen first, ScreenTruth.Screen second) {
        int at = first.passing();
        if (motion.distance(at, first.screener(), second.screener()) > DOUBLE_METRES) {
            return "staggered screens";
        }
        var one = motion.position(at, first.screener()).minus(motion.position(at, first.user()));
        var other = motion.position(at, second.screener()).minus(motion.position(at, first.user()));
        return one.dot(other) < 0 ? "elevator screen" : "double screen";
    }

    private LabelledEvent chain(String name, ScreenTruth.Screen first, ScreenTruth.Screen second) {
        double end = motion.scene().durationSeconds();
        return new EventMaker(
                        FindingKind.SCREEN_CHAIN,
                        Optional.of(name),
                        Math.min(first.fromSeconds(), second.fromSeconds()),
                        Math.max(first.toSeconds(end), second.toSeconds(end)))
                .at(motion.time(first.at()))
                .role(Role.SCREENER, first.screener())
                .role(Role.SECOND_SCREENER, second.screener())
                .role(Role.USER, first.user())
                .make();
    }
}
