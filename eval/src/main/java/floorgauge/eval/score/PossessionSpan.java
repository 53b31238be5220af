package floorgauge.eval.score;

/**
 * When a possession of the results took place.
 *
 * @param number as on the sheet, from 1
 * @param fromSeconds start
 * @param toSeconds end, at or after the start
 */
public record PossessionSpan(int number, double fromSeconds, double toSeconds) {

    public PossessionSpan {
        if (!(toSeconds >= fromSeconds)) {
            throw new IllegalArgumentException("a possession ends after its start: " + fromSeconds + ", " + toSeconds);
        }
    }

    /** Ends included. */
    boolean contains(double seconds) {
        return seconds >= fromSeconds && seconds <= toSeconds;
    }
}
