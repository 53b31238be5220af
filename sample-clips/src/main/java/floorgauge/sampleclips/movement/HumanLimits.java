package floorgauge.sampleclips.movement;

/** What a player's body can do. */
public final class HumanLimits {

    /** Common practice: about the top speed of a player on a court. */
    public static final double SPEED_METRES_PER_SECOND = 9;

    /** Common practice: hard starts, stops and turns. */
    public static final double ACCELERATION_METRES_PER_SECOND_SQUARED = 6;

    /** Radius of the body's envelope on the floor about the pelvis: the legal cylinder. */
    public static final double BODY_RADIUS_METRES = 0.25;

    private HumanLimits() {}
}
