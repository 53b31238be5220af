package floorgauge.events;

import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.IdentityDoubt;
import floorgauge.court.track.PlayerSighting;
import floorgauge.court.track.Team;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.ScriptReading;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayStream;
import floorgauge.events.script.OffScript;
import floorgauge.events.script.Script;
import floorgauge.events.script.ScriptReader;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Measures a film of any length in one pass over its frames; memory is bounded by the longest possession. Possessions are
 * handed on as they are done, in order of time. Not safe for use by several threads.
 */
public final class MeasurementStream {

    private final Standards standards;
    private final Consumer<PossessionFindings> out;
    private final PlayStream plays;
    private final Doubts doubts = new Doubts();
    private final Optional<ScriptReader> scripts;
    private int number;
    private boolean ball;
    private boolean anybody;
    private boolean teamed;

    /** Holds possessions against no script. */
    public MeasurementStream(RuleSet rules, Standards standards, Consumer<PossessionFindings> out) {
        this(rules, standards, List.of(), out);
    }

    /**
     * Begins a film.
     *
     * @param scripts what the team may have meant to run; each possession is held against the one that it resembles most
     */
    public MeasurementStream(
            RuleSet rules, Standards standards, List<Script> scripts, Consumer<PossessionFindings> out) {
        this.scripts = scripts.isEmpty() ? Optional.empty() : Optional.of(new ScriptReader(scripts, rules, standards));
        this.standards = standards;
        this.out = out;
        this.plays = new PlayStream(rules, standards, this::measure);
    }

    /**
     * Says that a track may have been exchanged with another; to be said before the end of the possession in which it
     * happened has been handed on.
     */
    public void doubt(int trackId, IdentityDoubt doubt) {
        doubts.add(trackId, doubt);
    }

    /** Takes a frame; times must grow. */
    public void accept(FloorFrame frame) {
        ball |= frame.ball().isPresent();
        for (PlayerSighting player : frame.players()) {
            anybody = true;
            teamed |= player.team() == Team.FIRST || player.team() == Team.SECOND;
        }
        plays.accept(frame);
    }

    /**
     * Measures what is left.
     *
     * @return what could not be measured on the whole film, and why
     */
    public List<NotSeen> finish() {
        plays.finish();
        List<NotSeen> notSeen = new ArrayList<>();
        if (!anybody) {
            notSeen.add(new NotSeen("players", "nobody was tracked on this film"));
        } else if (!teamed) {
            notSeen.add(new NotSeen("possessions", "no track is known to belong to a team"));
        } else if (number == 0) {
            notSeen.add(new NotSeen("possessions", "no stretch of play is long enough"));
        }
        if (!ball) {
            notSeen.add(new NotSeen(
                    "ball",
                    "the ball was not tracked; who has it is inferred from the players, passes are not measured"));
        }
        return List.copyOf(notSeen);
    }

    private void measure(Play play) {
        number++;
        out.accept(againstScripts(new PlayMeasurement(play, number, standards, doubts).measure()));
        doubts.forgetBefore(play.time(play.coreFrom()) - 60);
    }

    private PossessionFindings againstScripts(PossessionFindings measured) {
        Optional<ScriptReading> reading = scripts.flatMap(s -> s.read(measured, doubts::sound));
        if (reading.isEmpty()) {
            return measured;
        }
        List<Finding> findings = new ArrayList<>(measured.findings());
        OffScript.of(reading.get(), measured.possession(), standards.of(Setting.FLAG_PROBABILITY))
                .ifPresent(findings::add);
        findings.sort(Comparator.comparingDouble(Finding::fromSeconds).thenComparing(Finding::kind));
        return new PossessionFindings(
                measured.possession(), findings, measured.spacing(), measured.trails(), measured.notSeen(), reading);
    }
}
