package floorgauge.eval.score;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as text, without a locale and without an exponent. */
public final class Decimals {

    private Decimals() {}

    /** Rounded half even to a fixed number of decimals; "not defined" for NaN. */
    public static String of(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return "not defined";
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return (rounded.signum() == 0 ? rounded.abs() : rounded).toPlainString();
    }

    /** For a file that programs read: six decimals at most; empty for NaN. */
    public static String plain(double value) {
        if (!Double.isFinite(value)) {
            return "";
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(6, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
