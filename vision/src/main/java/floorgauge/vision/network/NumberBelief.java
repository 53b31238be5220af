package floorgauge.vision.network;

import java.util.Arrays;

/** What one look at a torso says about the number on it: a probability for each of 0 to 99, and for none that is legible. */
public final class NumberBelief {

    /** Numbers on jerseys, from 0 to 99. */
    public static final int NUMBERS = 100;

    private final float[] probabilities;

    /** @param probabilities of the numbers 0 to 99, then of none; each 0 to 1 */
    public NumberBelief(float[] probabilities) {
        if (probabilities.length != NUMBERS + 1) {
            throw new IllegalArgumentException(
                    "a belief has " + (NUMBERS + 1) + " probabilities, not " + probabilities.length);
        }
        for (float p : probabilities) {
            if (!(p >= 0 && p <= 1.0001f)) {
                throw new IllegalArgumentException("a probability lies in 0 to 1: " + p);
            }
        }
        this.probabilities = probabilities.clone();
    }

    /** That this number is there. */
    public double of(int number) {
        if (number < 0 || number >= NUMBERS) {
            throw new IllegalArgumentException("a jersey number lies in 0 to 99: " + number);
        }
        return probabilities[number];
    }

    /** That there is no number, or none that can be read. */
    public double none() {
        return probabilities[NUMBERS];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof NumberBelief belief && Arrays.equals(probabilities, belief.probabilities);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(probabilities);
    }
}
