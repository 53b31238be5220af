package floorgauge.vision.tracking;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * What a coach or a caller may choose about tracking. Metres and seconds only.
 *
 * @param detectionIntervalSeconds time between two frames in which people are looked for; frames between are interpolated
 * @param courtMarginMetres how far outside the lines a person still counts as a player
 * @param playersPerSide exactly as many of each team as are on the floor; empty where it is not known
 * @param coastSeconds how long a person not seen is followed by the motion model alone
 * @param joinGapSeconds longest absence after which two pieces of a track may be joined
 * @param fillGapSeconds longest gap inside a track that is filled with predicted positions
 * @param leastTrackSeconds a track seen for less is dropped as a false alarm
 * @param whom players, or everyone
 * @param parts what helps; all of it, but to measure what each is worth
 */
public record TrackingSettings(
        double detectionIntervalSeconds,
        double courtMarginMetres,
        OptionalInt playersPerSide,
        double coastSeconds,
        double joinGapSeconds,
        double fillGapSeconds,
        double leastTrackSeconds,
        Whom whom,
        TrackingParts parts) {

    public TrackingSettings {
        Objects.requireNonNull(whom, "whom");
        Objects.requireNonNull(parts, "parts");
        requireAtLeastZero(detectionIntervalSeconds, "detection interval");
        requireAtLeastZero(courtMarginMetres, "court margin");
        requireAtLeastZero(coastSeconds, "coasting time");
        requireAtLeastZero(joinGapSeconds, "longest gap to join");
        requireAtLeastZero(fillGapSeconds, "longest gap to fill");
        requireAtLeastZero(leastTrackSeconds, "least track");
        if (playersPerSide.isPresent() && playersPerSide.getAsInt() < 1) {
            throw new IllegalArgumentException("players per side must be at least 1: " + playersPerSide.getAsInt());
        }
        if (playersPerSide.isPresent() && whom == Whom.EVERYONE) {
            throw new IllegalArgumentException("where everyone is followed there are no sides to count");
        }
    }

    /**
     * Ten looks a second: at the human limit of 6 m/s2 (common practice) a player leaves the straight way between two by less than a
     * centimetre, and the errors of neighbouring looks are too alike for more of them to be worth their time. Half a second of coasting
     * bridges a person behind another; three seconds of absence, a screen and a turn.
     */
    public static TrackingSettings defaults() {
        return new TrackingSettings(0.1, 1.0, OptionalInt.empty(), 0.6, 4.0, 2.0, 0.4, Whom.PLAYERS, TrackingParts.ALL);
    }

    /** The same with so many players a side. */
    public TrackingSettings withPlayersPerSide(int players) {
        return new TrackingSettings(
                detectionIntervalSeconds,
                courtMarginMetres,
                OptionalInt.of(players),
                coastSeconds,
                joinGapSeconds,
                fillGapSeconds,
                leastTrackSeconds,
                whom,
                parts);
    }

    /** The same with people looked for so often. */
    public TrackingSettings withDetectionInterval(double seconds) {
        return new TrackingSettings(
                seconds,
                courtMarginMetres,
                playersPerSide,
                coastSeconds,
                joinGapSeconds,
                fillGapSeconds,
                leastTrackSeconds,
                whom,
                parts);
    }

    /** The same with another margin about the court. */
    public TrackingSettings withCourtMargin(double metres) {
        return new TrackingSettings(
                detectionIntervalSeconds,
                metres,
                playersPerSide,
                coastSeconds,
                joinGapSeconds,
                fillGapSeconds,
                leastTrackSeconds,
                whom,
                parts);
    }

    /** The same for everyone in the picture, wherever they stand and however many they are. */
    public TrackingSettings withEveryone() {
        return new TrackingSettings(
                detectionIntervalSeconds,
                courtMarginMetres,
                OptionalInt.empty(),
                coastSeconds,
                joinGapSeconds,
                fillGapSeconds,
                leastTrackSeconds,
                Whom.EVERYONE,
                parts);
    }

    /** The same with some parts switched off. */
    public TrackingSettings withParts(TrackingParts chosen) {
        return new TrackingSettings(
                detectionIntervalSeconds,
                courtMarginMetres,
                playersPerSide,
                coastSeconds,
                joinGapSeconds,
                fillGapSeconds,
                leastTrackSeconds,
                whom,
                chosen);
    }

    /** How players move: accelerations of 3 m/s2 (half the human limit of 6, common practice) that last half a second. */
    FloorMotion motion() {
        return new FloorMotion(3, 0.5, 2.5);
    }

    private static void requireAtLeastZero(double value, String what) {
        if (!(value >= 0 && Double.isFinite(value))) {
            throw new IllegalArgumentException(what + " must be at least 0 and finite: " + value);
        }
    }
}
