package floorgauge.sampleclips.scenario;

import java.util.Random;

/**
 * What a seed changes in a scenario: the side of the floor it is played on, small shifts of places and times. The same for all
 * versions of a scenario, so that a fault is the only difference between them.
 */
final class Variation {

    private static final double START_METRES = 0.2;
    private static final double SPOT_METRES = 0.15;
    private static final double TIME_SECONDS = 0.12;

    /** Takes before this one throw when the coach said. */
    static final int PATIENT_FROM_TAKE = 16;

    private final long seed;
    private final String scenario;
    private final int take;
    private final boolean mirrored;

    /** @param take changes places and times, but neither people nor the side of the floor */
    Variation(String scenario, long seed, int take) {
        this.scenario = scenario;
        this.seed = seed;
        this.take = take;
        this.mirrored = random("side").nextBoolean();
    }

    /** Whether passers of this take wait until nobody stands in the way of the ball. */
    boolean patient() {
        return take >= PATIENT_FROM_TAKE;
    }

    /** Whether left and right are exchanged. */
    boolean mirrored() {
        return mirrored;
    }

    /** A generator of its own for each purpose, so that one more draw for one leaves the others as they were. */
    Random random(String purpose) {
        long mixed = seed * 0x9E3779B97F4A7C15L + 31L * scenario.hashCode() + purpose.hashCode() * 0x100000001B3L;
        Random random = new Random(mixed);
        random.nextLong();
        return random;
    }

    /** A generator that differs from take to take. */
    Random randomOfTake(String purpose) {
        return random(take == 0 ? purpose : purpose + " in take " + take);
    }

    Spot start(Role role, Spot spot) {
        return shifted(spot, "start " + role, START_METRES);
    }

    /** @param purpose which spot of which step */
    Spot spot(String purpose, Spot spot) {
        return shifted(spot, "spot " + purpose, SPOT_METRES);
    }

    /** Seconds by which a step begins later than its file says. */
    double delay(String label) {
        return randomOfTake("delay " + label).nextDouble() * TIME_SECONDS;
    }

    private Spot shifted(Spot spot, String purpose, double metres) {
        Random random = randomOfTake(purpose);
        Spot side = mirrored ? spot.mirrored() : spot;
        return side.plus((2 * random.nextDouble() - 1) * metres, (2 * random.nextDouble() - 1) * metres);
    }
}
