package floorgauge.sampleclips.scene;

import java.util.OptionalInt;

/**
 * The ball at one instant.
 *
 * @param xMetres centre, court frame
 * @param yMetres centre, court frame
 * @param zMetres height of the centre above the floor
 * @param controlledBy id of the person who controls it; empty in flight
 */
public record BallState(double xMetres, double yMetres, double zMetres, OptionalInt controlledBy) {}
