package floorgauge.events.statistics;

/** The standard normal distribution. */
public final class Normal {

    private static final double FAR = 37;
    private static final double RATIONAL_LIMIT = 7.07106781186547;
    private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

    private static final double[] NUMERATOR = {
        3.52624965998911e-2,
        0.700383064443688,
        6.37396220353165,
        33.912866078383,
        112.079291497871,
        221.213596169931,
        220.206867912376
    };
    private static final double[] DENOMINATOR = {
        8.83883476483184e-2,
        1.75566716318264,
        16.064177579207,
        86.7807322029461,
        296.564248779674,
        637.333633378831,
        793.826512519948,
        440.413735824752
    };

    private Normal() {}

    /**
     * Probability that a standard normal value is at most z.
     *
     * <p>Hart's rational approximation (Hart and others, Computer Approximations, 1968, number 5666), with a continued
     * fraction in the tails, as arranged by West, Better Approximations to Cumulative Normal Functions, 2005 (from memory);
     * absolute error below 1e-14.
     */
    public static double cumulative(double z) {
        if (Double.isNaN(z)) {
            throw new IllegalArgumentException("not a number");
        }
        double a = Math.abs(z);
        double tail = a > FAR ? 0 : Math.exp(-a * a / 2) * tailOverDensity(a);
        return z > 0 ? 1 - tail : tail;
    }

    private static double tailOverDensity(double a) {
        if (a < RATIONAL_LIMIT) {
            return polynomial(NUMERATOR, a) / polynomial(DENOMINATOR, a);
        }
        double fraction = a + 0.65;
        for (int k = 4; k >= 1; k--) {
            fraction = a + k / fraction;
        }
        return 1 / (fraction * ROOT_TWO_PI);
    }

    private static double polynomial(double[] coefficients, double x) {
        double sum = 0;
        for (double c : coefficients) {
            sum = sum * x + c;
        }
        return sum;
    }

    /** Probability that a normal value lies at most at a limit; a step where the deviation is 0. */
    public static double atMost(double limit, double mean, double deviation) {
        return deviation > 0 ? cumulative((limit - mean) / deviation) : (mean <= limit ? 1 : 0);
    }

    /** Density of the standard normal distribution at z. */
    static double density(double z) {
        return Math.exp(-z * z / 2) / ROOT_TWO_PI;
    }
}
