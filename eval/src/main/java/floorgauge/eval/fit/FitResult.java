package floorgauge.eval.fit;

import floorgauge.eval.score.Decimals;
import floorgauge.eval.statistics.PairedDifference;
import floorgauge.events.standards.Standards;
import java.util.List;
import java.util.Objects;

/**
 * What a fit found.
 *
 * @param base the standards it started from
 * @param fitted the standards that fit all films best
 * @param measure what was fitted for, in words
 * @param before the measure under the base, on films held out
 * @param after the measure under the standards fitted without those films
 * @param gain after less before, higher is better, with an interval by film
 */
public record FitResult(
        Standards base, Standards fitted, String measure, double before, double after, PairedDifference gain) {

    public FitResult {
        Objects.requireNonNull(base, "base");
        Objects.requireNonNull(fitted, "fitted");
        Objects.requireNonNull(measure, "measure");
        Objects.requireNonNull(gain, "gain");
    }

    /** Whether the fit does better on unseen films by more than noise. */
    public boolean worthwhile() {
        return gain.beyondNoise() && gain.difference() > 0;
    }

    /** The standards to go on with: the fitted ones where they are worth it, else the base. */
    public Standards recommended() {
        return worthwhile() ? fitted : base;
    }

    /** One sentence with the figures. */
    public String sentence() {
        String figures = "on films held out, " + measure + " goes from " + Decimals.of(before, 3) + " to "
                + Decimals.of(after, 3) + " (gain " + Decimals.of(gain.difference(), 3) + ", 90 % interval "
                + (gain.interval().known()
                        ? Decimals.of(gain.interval().low(), 3) + " to "
                                + Decimals.of(gain.interval().high(), 3)
                        : "not defined")
                + ", " + gain.clips() + " films)";
        return worthwhile()
                ? "The fitted standards are better: " + figures + "."
                : "The standards are kept as they were, for the gain is within noise: " + figures + ".";
    }

    /** A standards file with what differs from the defaults, the sentence above it as a comment. */
    public String standardsFile() {
        return new FittedStandards(base, recommended(), List.of(sentence())).file();
    }
}
