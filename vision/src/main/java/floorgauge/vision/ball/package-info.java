/**
 * The ball: frames and players in, the ball's way through the film out.
 *
 * <p>{@link floorgauge.vision.ball.BallWatcher} looks for it in every few frames as they stream by;
 * {@link floorgauge.vision.ball.BallTracker} then finds the likeliest way through what was seen
 * ({@link floorgauge.vision.ball.BallPathFinder}), who had it ({@link floorgauge.vision.ball.HolderFinder}) and, where it
 * flew, its path under gravity ({@link floorgauge.vision.ball.FlightFitter}).
 */
package floorgauge.vision.ball;
