package floorgauge.app.drawing;

import floorgauge.court.floor.FloorPoint;
import floorgauge.events.finding.Figure;

/**
 * The two places between which a figure was measured: the players' own places for a distance, the near sides of their
 * envelopes for a gap.
 *
 * @param from first end, court frame
 * @param to second end, court frame
 */
record MeasuredEnds(FloorPoint from, FloorPoint to) {

    /** Radius of a body's envelope on the floor, metres. */
    private static final double ENVELOPE_METRES = 0.25;

    static MeasuredEnds of(FloorPoint from, FloorPoint to, Figure figure) {
        double distance = from.distanceTo(to);
        boolean gap = figure.name().contains("gap");
        if (!gap || distance <= 2 * ENVELOPE_METRES) {
            return new MeasuredEnds(from, to);
        }
        double share = ENVELOPE_METRES / distance;
        return new MeasuredEnds(between(from, to, share), between(to, from, share));
    }

    private static FloorPoint between(FloorPoint a, FloorPoint b, double share) {
        return new FloorPoint(
                a.xMetres() + share * (b.xMetres() - a.xMetres()), a.yMetres() + share * (b.yMetres() - a.yMetres()));
    }
}
