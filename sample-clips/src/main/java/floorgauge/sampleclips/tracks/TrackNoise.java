package floorgauge.sampleclips.tracks;

/**
 * How a tracker errs. All figures are in metres, seconds and events a minute, so that the frame rate does not change them.
 *
 * @param positionMetres standard error of a foot in each direction
 * @param correlationSeconds over which position errors stay alike: 0 for errors of their own in each frame
 * @param facingRadians standard error of where a body faces
 * @param gapsPerMinute how often a player is lost
 * @param gapSeconds mean length of such a gap
 * @param swapProbability that two team-mates who come within {@link TrueTracks#SWAP_METRES} of each other go on with each
 *     other's identity
 * @param ballGapsPerMinute how often the ball is lost
 * @param ballGapSeconds mean length of such a gap
 */
public record TrackNoise(
        double positionMetres,
        double correlationSeconds,
        double facingRadians,
        double gapsPerMinute,
        double gapSeconds,
        double swapProbability,
        double ballGapsPerMinute,
        double ballGapSeconds) {

    /** No error. */
    public static final TrackNoise NONE = new TrackNoise(0, 0, 0, 0, 0, 0, 0, 0);

    /** A good tracker on a clear film from a high stand: errors of this project's own choice. */
    public static final TrackNoise GOOD = new TrackNoise(0.10, 0.15, 0.20, 4, 0.3, 0.02, 20, 0.3);

    /** A middling tracker on a crowded film from a low stand: errors of this project's own choice. */
    public static final TrackNoise POOR = new TrackNoise(0.25, 0.25, 0.45, 15, 0.6, 0.15, 60, 0.6);

    public TrackNoise {
        for (double figure : new double[] {
            positionMetres,
            correlationSeconds,
            facingRadians,
            gapsPerMinute,
            gapSeconds,
            swapProbability,
            ballGapsPerMinute,
            ballGapSeconds
        }) {
            if (!(figure >= 0 && Double.isFinite(figure))) {
                throw new IllegalArgumentException("a size of an error is at least 0: " + figure);
            }
        }
        if (swapProbability > 1) {
            throw new IllegalArgumentException("a probability lies in 0 to 1: " + swapProbability);
        }
    }
}
