package floorgauge.events.screen;

import static floorgauge.events.words.Words.player;

import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.view.PlayView;
import floorgauge.events.words.FindingDraft;
import java.util.Optional;

/** Tells the switches with which a defence answers ball screens. */
public final class Switches {

    private static final double LIKELY = 0.5;
    private static final int LASTING_TICKS = UniformClock.ticks(1.0);

    private final Play play;
    private final DefenceReader reader;

    public Switches(PlayView view) {
        this.play = view.play();
        this.reader = new DefenceReader(view);
    }

    /** The switch, where that is the likeliest answer. */
    public Optional<Finding> of(Screen s) {
        double probability =
                reader.read(s).map(a -> a.get(DefenceAnswer.SWITCH)).orElse(0.0) * s.probability();
        if (probability < LIKELY) {
            return Optional.empty();
        }
        PlayerPath d = s.userDefender();
        PlayerPath e = s.screenerDefender().orElseThrow();
        int from = reader.meetsBall(s).orElse(Math.max(s.moment(), s.pass()));
        int to = play.clamp(from + LASTING_TICKS);
        return Optional.of(new FindingDraft(
                        FindingKind.SWITCH, FindingKind.SWITCH.words(), play.time(from), play.time(to))
                .role(Role.DEFENDER, d)
                .role(Role.DEFENDER, e)
                .probability(probability)
                .sentence(player(e.trackId()) + " takes " + player(s.user().trackId()) + " from "
                        + player(d.trackId()) + " on the screen by "
                        + player(s.screener().trackId()) + ".")
                .frame(play.time(from), "screen")
                .frame(play.time(to), "exchanged")
                .tick(play.time(from), 0.08, "screen")
                .build());
    }
}
