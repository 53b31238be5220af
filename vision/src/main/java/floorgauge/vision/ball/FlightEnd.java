package floorgauge.vision.ball;

import floorgauge.court.floor.FloorEstimate;

/**
 * Where a flight begins or ends: at somebody's hands.
 *
 * @param timeSeconds presentation time
 * @param floor below the ball, court frame
 * @param heightMetres of the ball's centre
 */
record FlightEnd(double timeSeconds, FloorEstimate floor, double heightMetres) {}
