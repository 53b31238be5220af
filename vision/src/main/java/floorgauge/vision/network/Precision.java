package floorgauge.vision.network;

/** Numbers in which a network is computed. */
public enum Precision {
    /** 32-bit floating point, as the network was trained. */
    SINGLE,
    /**
     * 16-bit floating point with eight bits of exponent: faster on processors that have instructions for it, slower on
     * others; joints and the edges of boxes shift by a fraction of a percent of the body's size.
     */
    BFLOAT16
}
