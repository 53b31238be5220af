package floorgauge.eval.ball;

/**
 * How far off a found ball may lie and still be the ball.
 *
 * @param pixels in the picture, above 0
 * @param seconds in time, at least 0
 */
public record BallTolerance(double pixels, double seconds) {

    public BallTolerance {
        if (!(pixels > 0 && Double.isFinite(pixels))) {
            throw new IllegalArgumentException("a distance is above 0: " + pixels);
        }
        if (!(seconds >= 0 && Double.isFinite(seconds))) {
            throw new IllegalArgumentException("a time is at least 0: " + seconds);
        }
    }
}
