package floorgauge.court.track;

/**
 * A span after which a track may go on with another person.
 *
 * @param otherTrackId the track it may have been exchanged with
 * @param fromSeconds when the two could first not be told apart
 * @param toSeconds when they could again, at or after {@code fromSeconds}
 * @param swapProbability that identities were exchanged, 0 to 1
 */
public record IdentityDoubt(int otherTrackId, double fromSeconds, double toSeconds, double swapProbability) {

    public IdentityDoubt {
        if (!(toSeconds >= fromSeconds)) {
            throw new IllegalArgumentException("a span ends after its start: " + fromSeconds + " to " + toSeconds);
        }
        if (!(swapProbability >= 0 && swapProbability <= 1)) {
            throw new IllegalArgumentException("a probability lies in 0 to 1: " + swapProbability);
        }
    }
}
