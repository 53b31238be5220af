/**
 * From positions seen frame by frame to smoothed motion on a uniform clock. Observations go in with their covariances, at
 * any frame rate; states come out at 25 Hz, each with the covariance of position and velocity.
 */
package floorgauge.events.motion;
