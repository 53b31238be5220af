package floorgauge.eval.statistics;

import java.util.Arrays;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;

/**
 * Errors of a figure, result less truth, in the figure's unit.
 *
 * @param count how many
 * @param bias their mean; NaN without any
 * @param spread their standard deviation, with n - 1; NaN below two
 * @param medianAbsolute median of their size; NaN without any
 * @param ninetiethAbsolute 90th percentile of their size; NaN without any
 */
public record ErrorSummary(int count, double bias, double spread, double medianAbsolute, double ninetiethAbsolute) {

    /** @param errors result less truth, finite */
    public static ErrorSummary of(double[] errors) {
        double bias = Ratios.of(Arrays.stream(errors).sum(), errors.length);
        double[] sizes = Arrays.stream(errors).map(Math::abs).sorted().toArray();
        return new ErrorSummary(
                errors.length,
                bias,
                errors.length < 2 ? Double.NaN : new StandardDeviation().evaluate(errors),
                Quantiles.ofSorted(sizes, 0.5),
                Quantiles.ofSorted(sizes, 0.9));
    }
}
