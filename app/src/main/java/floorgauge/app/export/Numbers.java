package floorgauge.app.export;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Measured numbers as they are written: to 0.0001 of their unit, as in {@code findings.json}. */
final class Numbers {

    private static final int DECIMALS = 4;

    private Numbers() {}

    static BigDecimal rounded(double value) {
        return rounded(value, DECIMALS);
    }

    static BigDecimal rounded(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return rounded.signum() == 0 ? BigDecimal.ZERO : new BigDecimal(rounded.toPlainString());
    }
}
