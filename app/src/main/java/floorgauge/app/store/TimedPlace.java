package floorgauge.app.store;

/**
 * Where someone was at one moment.
 *
 * @param seconds presentation time
 * @param x metres, court frame
 * @param y metres, court frame
 */
record TimedPlace(double seconds, double x, double y) {

    double distanceTo(TimedPlace other) {
        return Math.hypot(x - other.x, y - other.y);
    }
}
