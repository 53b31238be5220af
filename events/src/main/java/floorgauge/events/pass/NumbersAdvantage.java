package floorgauge.events.pass;

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
import floorgauge.events.screen.DefenceAnswer;
import floorgauge.events.screen.DefenceReader;
import floorgauge.events.screen.Screen;
import floorgauge.events.standards.Setting;
import floorgauge.events.view.PlayView;
import floorgauge.events.words.FindingDraft;
import floorgauge.events.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * After a hedge or blitz two defend the ball, so one attacker more is free elsewhere: whether an outlet, the screener rolling
 * or popping or a flash to the high post, was open in time.
 */
public final class NumbersAdvantage {

    private static final double BEYOND_METRES = 1.2;
    private static final double BESIDE_METRES = 0.3;

    private final PlayView view;
    private final Play play;
    private final OpenWindows windows;

    public NumbersAdvantage(PlayView view) {
        this.view = view;
        this.play = view.play();
        this.windows = new OpenWindows(view);
    }

    /** The advantage, and the flag where no outlet was there; nothing after other answers. */
    public List<Finding> of(Screen s) {
        List<Finding> found = new ArrayList<>();
        Optional<Map<DefenceAnswer, Double>> answers = new DefenceReader(view).read(s);
        double probability = answers.map(a -> a.get(DefenceAnswer.HEDGE) + a.get(DefenceAnswer.BLITZ))
                        .orElse(0.0)
                * s.probability();
        if (probability < 0.5) {
            return found;
        }
        int from = new DefenceReader(view).meetsBall(s).orElse(s.pass());
        int to = play.clamp(from + UniformClock.ticks(view.standards().of(Setting.DEFENCE_OUTLET_TIME)));
        Optional<PlayerPath> outlet = Optional.empty();
        int when = to;
        for (int i = from; i <= to && outlet.isEmpty(); i++) {
            outlet = outlet(s, i);
            when = outlet.isPresent() ? i : to;
        }
        Figure after = Figure.of("outlet open after", play.time(when) - play.time(from), 0.08, Unit.SECONDS);
        String two = player(s.userDefender().trackId()) + " and "
                + player(s.screenerDefender().orElseThrow().trackId()) + " both play "
                + player(s.user().trackId());
        String label = hedge(answers.orElseThrow()) ? DefenceAnswer.HEDGE.words() : DefenceAnswer.BLITZ.words();
        FindingDraft draft =
                draft(FindingKind.NUMBERS_ADVANTAGE, label, s, from, to).probability(probability);
        outlet.ifPresent(o -> draft.role(Role.OUTLET, o).figure(after));
        found.add(draft.sentence(
                        outlet.isPresent()
                                ? two + "; " + player(outlet.get().trackId()) + " is open after " + Words.of(after)
                                        + "."
                                : two + "; nobody is open within "
                                        + Words.seconds(view.standards().of(Setting.DEFENCE_OUTLET_TIME)) + ".")
                .build());
        if (outlet.isEmpty() && probability >= view.standards().of(Setting.FLAG_PROBABILITY)) {
            found.add(flag(s, label, from, to, probability, two));
        }
        return found;
    }

    private static boolean hedge(Map<DefenceAnswer, Double> answers) {
        return answers.get(DefenceAnswer.HEDGE) >= answers.get(DefenceAnswer.BLITZ);
    }

    private Finding flag(Screen s, String label, int from, int to, double probability, String two) {
        double nearest = nearest(s.screener(), to);
        Figure covered = Figure.of(
                        "separation of the screener",
                        nearest,
                        s.screener().seen(to) ? s.screener().covariance(to).standardErrorMetres() * Math.sqrt(2) : 1,
                        Unit.METRES)
                .against(new Threshold(
                        Setting.WINDOW_OPEN_DISTANCE.key(),
                        view.standards().of(Setting.WINDOW_OPEN_DISTANCE),
                        Threshold.Side.AT_LEAST));
        return draft(FindingKind.NO_OUTLET, label, s, from, to)
                .figure(covered)
                .probability(probability)
                .severity(0.5, covered)
                .sentence(two + ", yet nobody is open within "
                        + Words.seconds(view.standards().of(Setting.DEFENCE_OUTLET_TIME)) + "; "
                        + player(s.screener().trackId()) + " has " + Words.of(covered) + " ("
                        + Words.sure(probability) + ").")
                .mark(new Mark.Path(s.screener().trackId(), play.time(from), play.time(to), covered))
                .build();
    }

    private FindingDraft draft(FindingKind kind, String label, Screen s, int from, int to) {
        return new FindingDraft(kind, label, play.time(from), play.time(to))
                .role(Role.BALL_HANDLER, s.user())
                .role(Role.SCREENER, s.screener())
                .role(Role.USER_DEFENDER, s.userDefender())
                .role(Role.SCREENER_DEFENDER, s.screenerDefender().orElseThrow())
                .frame(play.time(from), "two on the ball")
                .frame(play.time((from + to) / 2), "the screener's way")
                .frame(play.time(to), "outlet due")
                .tick(play.time(from), 0.04, "screen")
                .tick(play.time(to), 0.04, "outlet due");
    }

    private Optional<PlayerPath> outlet(Screen s, int i) {
        return play.attackers().stream()
                .filter(a -> a != s.user() && a.seen(i) && s.user().seen(i) && windows.isOpen(a, s.user(), i))
                .filter(a -> a == s.screener() || flashes(a, i))
                .findFirst();
    }

    /** In the middle, from the rim to beyond the free-throw line. */
    private boolean flashes(PlayerPath a, int i) {
        AttackGeometry g = play.geometry();
        return g.rimDistance(a.x(i), a.y(i)) < g.rimX() - g.freeThrowX() + BEYOND_METRES
                && Math.abs(a.y(i)) < g.halfLane() + BESIDE_METRES;
    }

    private double nearest(PlayerPath a, int i) {
        return play.defenders().stream()
                .filter(d -> d.seen(i) && a.seen(i))
                .mapToDouble(d -> d.distanceTo(a, i))
                .min()
                .orElse(0);
    }
}
