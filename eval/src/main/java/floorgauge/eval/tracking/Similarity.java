package floorgauge.eval.tracking;

/**
 * How well a result sits on the truth. A score's threshold is a value of this.
 *
 * @param <T> what is compared
 */
@FunctionalInterface
public interface Similarity<T> {

    /** From 0 (nothing in common) to 1 (the same). */
    double of(T truth, T result);
}
