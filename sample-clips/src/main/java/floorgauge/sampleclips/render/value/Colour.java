package floorgauge.sampleclips.render.value;

/** Turns 0xRRGGBB colours into linear light (IEC 61966-2-1, sRGB). */
public final class Colour {

    private static final float[] LINEAR = new float[256];

    static {
        for (int i = 0; i < 256; i++) {
            double c = i / 255.0;
            LINEAR[i] = (float) (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
    }

    private Colour() {}

    /** Red, green, blue in linear light, 0 to 1. */
    public static float[] linear(int rgb) {
        return new float[] {LINEAR[rgb >> 16 & 255], LINEAR[rgb >> 8 & 255], LINEAR[rgb & 255]};
    }
}
