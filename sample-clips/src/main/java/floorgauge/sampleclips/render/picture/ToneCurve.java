package floorgauge.sampleclips.render.picture;

import java.util.Arrays;

/**
 * From the light that a sensor sees to the byte that a film stores: a soft shoulder and the sRGB curve (IEC 61966-2-1). The
 * byte rises with the light, so it is found from the 255 lights at which it steps up; a coarse table by the light's exponent
 * and leading bits says where among them to begin.
 */
final class ToneCurve {

    private static final int TABLE = 8192;
    private static final double TABLE_LIGHT = 4;
    private static final double KNEE = 0.55;
    /** Of a float's 23 bits of fraction, 9 are looked at. */
    private static final int SHIFT = 23 - 9;

    private static final int FIRST = Float.floatToIntBits(0x1p-14f) >> SHIFT;
    private static final int LAST = Float.floatToIntBits((float) TABLE_LIGHT) >> SHIFT;

    /** Least light that shows as a byte or more; no number at the end, which no light reaches. */
    private final double[] steps = new double[257];

    private final byte[] coarse = new byte[LAST - FIRST + 1];

    ToneCurve() {
        byte[] tone = new byte[TABLE];
        for (int i = 0; i < TABLE; i++) {
            double root = i / (TABLE - 1.0);
            tone[i] = (byte) Math.round(255 * curve(root * root * TABLE_LIGHT));
        }
        Arrays.fill(steps, Double.NaN);
        steps[0] = Double.NEGATIVE_INFINITY;
        for (int shown = 1; shown <= (tone[TABLE - 1] & 255); shown++) {
            steps[shown] = least(tone, shown);
        }
        for (int bin = 1; bin < coarse.length; bin++) {
            // What rounds to the bin's first float lies above the float before it.
            double below = Math.nextDown(Float.intBitsToFloat((FIRST + bin) << SHIFT));
            coarse[bin] = (byte) (firstAbove(below) - 1);
        }
    }

    private static double curve(double light) {
        double room = 1 - KNEE;
        double shown = light < KNEE ? light : KNEE + room * (1 - Math.exp(-(light - KNEE) / room));
        return shown <= 0.0031308 ? 12.92 * shown : 1.055 * Math.pow(shown, 1 / 2.4) - 0.055;
    }

    /** By bisection over the bits of the numbers from 0 to the table's end, which rise with the numbers. */
    private static double least(byte[] tone, int shown) {
        long low = 0;
        long high = Double.doubleToLongBits(TABLE_LIGHT);
        while (high - low > 1) {
            long middle = (low + high) >>> 1;
            if ((tone[index(Double.longBitsToDouble(middle))] & 255) >= shown) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return Double.longBitsToDouble(high);
    }

    private static int index(double light) {
        return Math.min(TABLE - 1, (int) (Math.sqrt(light / TABLE_LIGHT) * (TABLE - 1) + 0.5));
    }

    private int firstAbove(double light) {
        int shown = 1;
        while (light >= steps[shown]) {
            shown++;
        }
        return shown;
    }

    /** The byte that a light shows as; 0 for one below 0. */
    byte at(double light) {
        int bin = (Float.floatToRawIntBits((float) light) >> SHIFT) - FIRST;
        int shown = coarse[Math.max(0, Math.min(LAST - FIRST, bin))] & 255;
        while (light >= steps[shown + 1]) {
            shown++;
        }
        return (byte) shown;
    }
}
