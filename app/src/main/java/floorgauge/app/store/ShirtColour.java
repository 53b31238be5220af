package floorgauge.app.store;

/**
 * A shirt's colour as people see it: CIE L*a*b* of 1976 from sRGB (IEC 61966-2-1), white D65.
 *
 * @param lightness L*, 0 to 100
 * @param a from green to red
 * @param b from blue to yellow
 */
record ShirtColour(double lightness, double a, double b) {

    /** @param rgb 0xRRGGBB of sRGB */
    static ShirtColour of(int rgb) {
        double red = linear(rgb >> 16 & 0xFF);
        double green = linear(rgb >> 8 & 0xFF);
        double blue = linear(rgb & 0xFF);
        double x = response((0.4124564 * red + 0.3575761 * green + 0.1804375 * blue) / 0.95047);
        double y = response(0.2126729 * red + 0.7151522 * green + 0.0721750 * blue);
        double z = response((0.0193339 * red + 0.1191920 * green + 0.9503041 * blue) / 1.08883);
        return new ShirtColour(116 * y - 16, 500 * (x - y), 200 * (y - z));
    }

    private static double linear(int channel) {
        double value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }

    private static double response(double t) {
        double corner = 6.0 / 29;
        return t > corner * corner * corner ? Math.cbrt(t) : t / (3 * corner * corner) + 4.0 / 29;
    }

    /** Difference of two colours, CIE 1976: about 2.3 is what people just notice (Mahy and others, 1994). */
    double differenceTo(ShirtColour other) {
        return Math.sqrt(
                Math.pow(lightness - other.lightness, 2) + Math.pow(a - other.a, 2) + Math.pow(b - other.b, 2));
    }
}
