package floorgauge.app.drawing;

import floorgauge.events.finding.Trail;
import floorgauge.events.finding.TrailPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A player's way on a plan: attackers drawn through, defenders dotted; the less certain, the thinner; gaps stay open. */
final class TrailDrawing {

    /** Points farther apart than this in time are not joined: what lies between was not seen. */
    private static final double GAP_SECONDS = 0.15;

    /** Up to this standard error a way is drawn at full weight: less than a body's radius. */
    private static final double CERTAIN_METRES = 0.20;

    /** Beyond this standard error, twice a body's radius, at the least weight. */
    private static final double DOUBTFUL_METRES = 0.50;

    private TrailDrawing() {}

    /** Draws the part of the trail between two times. */
    static void draw(Svg svg, PlanFrame plan, Trail trail, double fromSeconds, double toSeconds) {
        List<double[]> piece = new ArrayList<>();
        String weight = "";
        double lastTime = Double.NaN;
        for (TrailPoint point : trail.points()) {
            if (point.timeSeconds() < fromSeconds || point.timeSeconds() > toSeconds) {
                continue;
            }
            String here = weight(point);
            boolean gap = point.timeSeconds() - lastTime > GAP_SECONDS;
            if (gap || !here.equals(weight)) {
                finish(svg, piece, trail, weight);
                double[] joint = piece.isEmpty() || gap ? null : piece.get(piece.size() - 1);
                piece = new ArrayList<>();
                if (joint != null) {
                    piece.add(joint);
                }
                weight = here;
            }
            piece.add(plan.at(point.position().mean()));
            lastTime = point.timeSeconds();
        }
        finish(svg, piece, trail, weight);
    }

    /** The point of the trail nearest in time, where there is one within the gap that is drawn through. */
    static Optional<TrailPoint> at(Trail trail, double timeSeconds) {
        TrailPoint best = null;
        for (TrailPoint point : trail.points()) {
            if (best == null
                    || Math.abs(point.timeSeconds() - timeSeconds) < Math.abs(best.timeSeconds() - timeSeconds)) {
                best = point;
            }
        }
        boolean near = best != null && Math.abs(best.timeSeconds() - timeSeconds) <= GAP_SECONDS;
        return near ? Optional.of(best) : Optional.empty();
    }

    private static String weight(TrailPoint point) {
        double error = point.position().covariance().standardErrorMetres();
        return error <= CERTAIN_METRES ? "certain" : error <= DOUBTFUL_METRES ? "fair" : "doubtful";
    }

    private static void finish(Svg svg, List<double[]> piece, Trail trail, String weight) {
        if (piece.size() > 1) {
            svg.polyline(thinned(piece), "trail " + (trail.attacking() ? "attacker " : "defender ") + weight);
        }
    }

    /** Leaves out points nearer than half a unit (2.5 cm) to the one before, which no eye or printer tells apart. */
    private static List<double[]> thinned(List<double[]> points) {
        List<double[]> kept = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            double[] point = points.get(i);
            double[] last = kept.isEmpty() ? null : kept.get(kept.size() - 1);
            boolean apart = last == null || Math.hypot(point[0] - last[0], point[1] - last[1]) >= 0.5;
            if (apart || i == points.size() - 1) {
                kept.add(point);
            }
        }
        return kept;
    }
}
