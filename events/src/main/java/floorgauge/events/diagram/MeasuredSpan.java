package floorgauge.events.diagram;

import floorgauge.court.floor.FloorPoint;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Threshold;

/**
 * A measured distance between two places of the floor.
 *
 * @param from first end, court frame
 * @param to second end
 * @param figure the distance
 */
record MeasuredSpan(FloorPoint from, FloorPoint to, Figure figure) {

    /** Radius of a body's envelope on the floor. */
    static final double ENVELOPE_METRES = 0.25;

    /** Between two players: a gap reaches from envelope to envelope, every other distance from middle to middle. */
    static MeasuredSpan between(FloorPoint a, FloorPoint b, Figure figure) {
        double distance = a.distanceTo(b);
        boolean gap = figure.name().contains("gap") && distance > 2 * ENVELOPE_METRES;
        double share = gap ? ENVELOPE_METRES / distance : 0;
        return new MeasuredSpan(part(a, b, share), part(b, a, share), figure);
    }

    private static FloorPoint part(FloorPoint a, FloorPoint b, double share) {
        return new FloorPoint(
                a.xMetres() + share * (b.xMetres() - a.xMetres()), a.yMetres() + share * (b.yMetres() - a.yMetres()));
    }

    /** Whether the figure lies on the wrong side of what it was held against. */
    boolean isBeyond() {
        return figure.threshold()
                .map(t -> t.sound() == Threshold.Side.AT_MOST ? figure.value() > t.value() : figure.value() < t.value())
                .orElse(false);
    }
}
