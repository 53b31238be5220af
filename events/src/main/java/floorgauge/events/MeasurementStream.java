package floorgauge.events;

import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.IdentityDoubt;
import floorgauge.court.track.PlayerSighting;
import floorgauge.court.track.Team;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayStream;
import floorgauge.events.standards.Standards;
import java.util.ArrayList;
import java.util.List;
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
    private int number;
    private boolean ball;
    private boolean anybody;
    private boolean teamed;

    public MeasurementStream(RuleSet rules, Standards standards, Consumer<PossessionFindings> out) {
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
        out.accept(new PlayMeasurement(play, number, standards, doubts).measure());
        doubts.forgetBefore(play.time(play.coreFrom()) - 60);
    }
}
