package floorgauge.court.rules;

import floorgauge.court.floor.FloorPoint;
import java.util.Objects;

/** A line painted on the floor: its centre line in the court frame, and its width. */
public sealed interface PaintedLine {

    /** What the rule books call it, in lower case with hyphens, unique within a rule set. */
    String name();

    /** Width of the paint in metres. */
    double widthMetres();

    /** The point nearest to another of the whole line or circle that this is a piece of; on the middle of the paint. */
    FloorPoint nearestTo(FloorPoint point);

    /** Unit direction of the line at a point of it, x then y; either way along. */
    double[] directionAt(FloorPoint point);

    /** A straight piece of paint between two points of its centre line. */
    record Straight(String name, FloorPoint from, FloorPoint to, double widthMetres) implements PaintedLine {

        public Straight {
            Objects.requireNonNull(name, "name");
            requirePositive(widthMetres, "width");
            if (from.equals(to)) {
                throw new IllegalArgumentException(name + " has no length");
            }
        }

        @Override
        public FloorPoint nearestTo(FloorPoint point) {
            double dx = to.xMetres() - from.xMetres();
            double dy = to.yMetres() - from.yMetres();
            double t = ((point.xMetres() - from.xMetres()) * dx + (point.yMetres() - from.yMetres()) * dy)
                    / (dx * dx + dy * dy);
            return new FloorPoint(from.xMetres() + t * dx, from.yMetres() + t * dy);
        }

        @Override
        public double[] directionAt(FloorPoint point) {
            double length = from.distanceTo(to);
            return new double[] {(to.xMetres() - from.xMetres()) / length, (to.yMetres() - from.yMetres()) / length};
        }
    }

    /**
     * A piece of a circle.
     *
     * @param centre of the circle
     * @param radiusMetres to the middle of the paint
     * @param startRadians direction of its first point from the centre, from the x axis towards y
     * @param sweepRadians signed angle to its last point, at most a full turn
     */
    record Arc(
            String name,
            FloorPoint centre,
            double radiusMetres,
            double startRadians,
            double sweepRadians,
            double widthMetres)
            implements PaintedLine {

        public Arc {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(centre, "centre");
            requirePositive(widthMetres, "width");
            requirePositive(radiusMetres, "radius");
            if (!(Math.abs(sweepRadians) > 0 && Math.abs(sweepRadians) <= 2 * Math.PI + 1e-12)) {
                throw new IllegalArgumentException(name + " must sweep more than nothing, at most a full turn");
            }
        }

        @Override
        public FloorPoint nearestTo(FloorPoint point) {
            double dx = point.xMetres() - centre.xMetres();
            double dy = point.yMetres() - centre.yMetres();
            double distance = Math.hypot(dx, dy);
            return distance == 0
                    ? at(0)
                    : new FloorPoint(
                            centre.xMetres() + radiusMetres * dx / distance,
                            centre.yMetres() + radiusMetres * dy / distance);
        }

        @Override
        public double[] directionAt(FloorPoint point) {
            double distance = point.distanceTo(centre);
            return new double[] {
                -(point.yMetres() - centre.yMetres()) / distance, (point.xMetres() - centre.xMetres()) / distance
            };
        }

        /** The centre-line point at a fraction 0 to 1 of the sweep. */
        public FloorPoint at(double fraction) {
            double angle = startRadians + fraction * sweepRadians;
            return new FloorPoint(
                    centre.xMetres() + radiusMetres * Math.cos(angle),
                    centre.yMetres() + radiusMetres * Math.sin(angle));
        }
    }

    private static void requirePositive(double value, String what) {
        if (!(value > 0 && Double.isFinite(value))) {
            throw new IllegalArgumentException(what + " must be above 0: " + value);
        }
    }
}
