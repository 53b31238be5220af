package floorgauge.vision.network;

/** Which pose network runs. */
public enum PoseQuality {
    /** Crops of 192 pixels; about four times as fast as {@link #FINE}. */
    FAST("pose-fast", 192),
    /** Crops of 256 pixels. */
    FINE("pose-fine", 256);

    private final String network;
    private final int side;

    PoseQuality(String network, int side) {
        this.network = network;
        this.side = side;
    }

    String network() {
        return network;
    }

    /** Side of the crop that the network sees, pixels. */
    public int side() {
        return side;
    }
}
