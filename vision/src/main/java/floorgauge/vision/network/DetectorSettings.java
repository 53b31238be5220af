package floorgauge.vision.network;

/**
 * What counts as a person found.
 *
 * @param minScore detections below are left out, 0 to 1
 * @param maxOverlap intersection over union above which two boxes are one person, 0 to 1
 */
public record DetectorSettings(double minScore, double maxOverlap) {

    public DetectorSettings {
        if (!(minScore >= 0 && minScore <= 1) || !(maxOverlap >= 0 && maxOverlap <= 1)) {
            throw new IllegalArgumentException("must lie in 0 to 1: " + minScore + ", " + maxOverlap);
        }
    }

    /** Good on film of halls; see the network's card for what other values give. */
    public static DetectorSettings standard() {
        return new DetectorSettings(0.3, 0.6);
    }
}
