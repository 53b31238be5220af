package floorgauge.court.lines;

/**
 * A point on the middle of a stripe, to a fraction of a pixel.
 *
 * @param x working picture
 * @param y working picture
 * @param normalX unit vector across the stripe
 * @param normalY unit vector across the stripe
 * @param strength how far the stripe stands out, in units of the noise
 * @param contrastL lightness of the stripe less that beside it, CIE L*
 * @param contrastA the same for a* (green to red)
 * @param contrastB the same for b* (blue to yellow)
 */
public record RidgePoint(
        double x,
        double y,
        double normalX,
        double normalY,
        double strength,
        double contrastL,
        double contrastA,
        double contrastB) {

    /** The same point, counting for so much. */
    RidgePoint withStrength(double other) {
        return new RidgePoint(x, y, normalX, normalY, other, contrastL, contrastA, contrastB);
    }

    /** Cosine of the angle between two contrasts, which tells colours of paint apart; 0 where one has no contrast. */
    public double contrastCosine(double l, double a, double b) {
        double own = Math.sqrt(contrastL * contrastL + contrastA * contrastA + contrastB * contrastB);
        double other = Math.sqrt(l * l + a * a + b * b);
        return own > 0 && other > 0 ? (contrastL * l + contrastA * a + contrastB * b) / (own * other) : 0;
    }
}
