package floorgauge.court.track;

/**
 * A number read off a jersey. A suggestion: who it is, someone must say.
 *
 * @param number 0 to 99
 * @param probability that this is the number, 0 to 1
 */
public record JerseyReading(int number, double probability) {

    public JerseyReading {
        if (number < 0 || number > 99) {
            throw new IllegalArgumentException("a jersey number lies in 0 to 99: " + number);
        }
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("a probability lies in 0 to 1: " + probability);
        }
    }
}
