package floorgauge.app.export.clip;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Unit;

/**
 * A distance on the floor in one frame: between two players, between the near sides of their bodies' envelopes, or from a player to a
 * place. With d the vector between the means and u its direction, the variance is u' (A + B) u.
 *
 * @param from first end, court frame
 * @param to second end
 * @param figure with its standard error
 */
record LiveDistance(FloorPoint from, FloorPoint to, Figure figure) {

    /** Radius of a body's envelope on the floor, metres. */
    static final double ENVELOPE_METRES = 0.25;

    /**
     * Between two players.
     *
     * @param like the figure measured at the decisive moment: a gap is taken between envelopes, and its threshold holds
     */
    static LiveDistance between(FloorEstimate a, FloorEstimate b, Figure like) {
        double distance = a.mean().distanceTo(b.mean());
        double variance = distance > 0
                ? along(a, b.mean(), a.mean(), distance) + along(b, b.mean(), a.mean(), distance)
                : a.covariance().xx() + b.covariance().xx();
        if (!like.name().contains("gap")) {
            return new LiveDistance(a.mean(), b.mean(), figure(like, distance, variance));
        }
        double gap = Math.max(0, distance - 2 * ENVELOPE_METRES);
        double share = gap > 0 ? ENVELOPE_METRES / distance : 0;
        return new LiveDistance(
                towards(a.mean(), b.mean(), share), towards(b.mean(), a.mean(), share), figure(like, gap, variance));
    }

    /** From a player to a place that is known exactly. */
    static LiveDistance to(FloorEstimate a, FloorPoint place, Figure like) {
        double distance = a.mean().distanceTo(place);
        double variance = distance > 0
                ? along(a, place, a.mean(), distance)
                : a.covariance().xx();
        return new LiveDistance(a.mean(), place, figure(like, distance, variance));
    }

    private static double along(FloorEstimate of, FloorPoint to, FloorPoint from, double distance) {
        return of.covariance()
                .varianceAlong((to.xMetres() - from.xMetres()) / distance, (to.yMetres() - from.yMetres()) / distance);
    }

    private static FloorPoint towards(FloorPoint a, FloorPoint b, double share) {
        return new FloorPoint(
                a.xMetres() + share * (b.xMetres() - a.xMetres()), a.yMetres() + share * (b.yMetres() - a.yMetres()));
    }

    private static Figure figure(Figure like, double metres, double variance) {
        Figure live = Figure.of(like.name(), metres, Math.sqrt(Math.max(0, variance)), Unit.METRES);
        return like.threshold().map(live::against).orElse(live);
    }
}
