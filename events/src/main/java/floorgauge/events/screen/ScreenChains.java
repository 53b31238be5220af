package floorgauge.events.screen;

import static floorgauge.events.words.Words.player;

import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.play.Play;
import floorgauge.events.standards.Setting;
import floorgauge.events.view.PlayView;
import floorgauge.events.words.FindingDraft;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Names screens that belong together: staggered, double, elevator, screen the screener, simultaneous pin-downs. */
public final class ScreenChains {

    private final PlayView view;
    private final Play play;

    public ScreenChains(PlayView view) {
        this.view = view;
        this.play = view.play();
    }

    /** @param all screens of the play */
    public List<Finding> of(List<Screen> all) {
        List<Screen> screens = all.stream()
                .sorted(Comparator.comparingInt(Screen::pass)
                        .thenComparingInt(s -> s.screener().trackId()))
                .toList();
        List<Finding> found = new ArrayList<>();
        for (int a = 0; a < screens.size(); a++) {
            for (int b = a + 1; b < screens.size(); b++) {
                String name = name(screens.get(a), screens.get(b));
                double probability =
                        screens.get(a).probability() * screens.get(b).probability();
                if (!name.isEmpty() && probability >= Screens.LEAST_PROBABILITY) {
                    found.add(chain(name, screens.get(a), screens.get(b)));
                }
            }
        }
        return found;
    }

    private String name(Screen first, Screen second) {
        double apart = play.time(second.pass()) - play.time(first.pass());
        if (Math.abs(apart) > view.standards().of(Setting.SCREEN_STAGGER_TIME)) {
            return "";
        }
        if (first.user() == second.user() && first.screener() != second.screener()) {
            return sameUser(first, second);
        }
        if (isThree(first, second) && (first.user() == second.screener() || first.screener() == second.user())) {
            return "screen the screener";
        }
        boolean together = Math.abs(apart) <= view.standards().of(Setting.SCREEN_SIMULTANEOUS_TIME);
        boolean apartPlayers = first.user() != second.user() && first.screener() != second.screener();
        boolean down = first.kind() == ScreenKind.DOWN && second.kind() == ScreenKind.DOWN;
        return together && apartPlayers && down ? "simultaneous pin-downs" : "";
    }

    /** Two who screen for each other in turn are a pick and its roll past the ball, and no chain. */
    private static boolean isThree(Screen first, Screen second) {
        return first.user() != second.screener() || first.screener() != second.user();
    }

    private String sameUser(Screen first, Screen second) {
        int i = first.pass();
        if (!first.screener().seen(i) || !second.screener().seen(i)) {
            return "staggered screens";
        }
        if (first.screener().distanceTo(second.screener(), i) > view.standards().of(Setting.SCREEN_DOUBLE_DISTANCE)) {
            return "staggered screens";
        }
        return runsBetween(first, second, i) ? "elevator screen" : "double screen";
    }

    /** Whether U goes through the gap between the two. */
    private static boolean runsBetween(Screen first, Screen second, int i) {
        double ax = first.screener().x(i) - first.user().x(i);
        double ay = first.screener().y(i) - first.user().y(i);
        double bx = second.screener().x(i) - first.user().x(i);
        double by = second.screener().y(i) - first.user().y(i);
        return ax * bx + ay * by < 0;
    }

    private Finding chain(String name, Screen first, Screen second) {
        double from = Math.min(play.time(first.from()), play.time(second.from()));
        double to = Math.max(play.time(first.to()), play.time(second.to()));
        return new FindingDraft(FindingKind.SCREEN_CHAIN, name, from, to)
                .role(Role.SCREENER, first.screener())
                .role(Role.SECOND_SCREENER, second.screener())
                .role(Role.USER, first.user())
                .probability(first.probability() * second.probability())
                .sentence(name.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + name.substring(1) + ": "
                        + player(first.screener().trackId()) + " for "
                        + player(first.user().trackId()) + ", "
                        + player(second.screener().trackId()) + " for "
                        + player(second.user().trackId()) + ".")
                .frame(play.time(first.moment()), "first screen")
                .frame(play.time(second.moment()), "second screen")
                .tick(play.time(first.moment()), 0.04, "screen")
                .tick(play.time(second.moment()), 0.04, "second screen")
                .build();
    }
}
