package floorgauge.sampleclips.scene;

/**
 * What a person wears, as 0xRRGGBB colours.
 *
 * @param shirtRgb shirt
 * @param shortsRgb shorts
 * @param numberRgb jersey number
 * @param shoesRgb shoes
 */
public record Kit(int shirtRgb, int shortsRgb, int numberRgb, int shoesRgb) {

    public Kit {
        for (int rgb : new int[] {shirtRgb, shortsRgb, numberRgb, shoesRgb}) {
            if (rgb < 0 || rgb > 0xFFFFFF) {
                throw new IllegalArgumentException(
                        "a colour lies in 0x000000 to 0xFFFFFF: " + Integer.toHexString(rgb));
            }
        }
    }
}
