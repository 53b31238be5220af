package floorgauge.events.play;

import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FloorFrame;
import floorgauge.events.standards.Standards;
import java.util.function.Consumer;

/**
 * Frames in, plays out: one pass, memory bounded by the longest possession. Not safe for use by several threads.
 */
public final class PlayStream {

    private final FloorResampler resampler;
    private final AttackTracker attacks;
    private final PlayCutter cutter;

    /** @param out takes the plays in order of time */
    public PlayStream(RuleSet rules, Standards standards, Consumer<Play> out) {
        this.cutter = new PlayCutter(standards, stretch -> out.accept(new Play(stretch, rules)));
        this.attacks = new AttackTracker(rules, cutter::accept);
        this.resampler = new FloorResampler(standards, attacks::accept);
    }

    /** Takes a frame; times must grow. */
    public void accept(FloorFrame frame) {
        resampler.accept(frame);
    }

    /** Gives out what is left. */
    public void finish() {
        resampler.finish();
        attacks.finish();
        cutter.finish();
    }
}
