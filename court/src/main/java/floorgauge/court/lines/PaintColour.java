package floorgauge.court.lines;

import java.util.ArrayList;
import java.util.List;

/**
 * A colour of paint, found and not assumed: the direction in CIE Lab in which ridge points differ from the floor beside
 * them. The direction stays where a far, thin line is mixed with floor; the amount does not.
 *
 * @param l unit vector
 * @param a unit vector
 * @param b unit vector
 * @param weight sum of strengths of the ridge points that have it
 */
public record PaintColour(double l, double a, double b, double weight) {

    /** Half the opening of the cone of one paint: 32 degrees. White, black, blue and yellow on wood lie farther apart. */
    private static final double SAME_PAINT = Math.cos(Math.toRadians(32));

    /** Paint with a smaller share of all ridge strength than this is no court's. */
    private static final double LEAST_SHARE = 0.04;

    private static final int MOST_COLOURS = 5;

    /** Whether a ridge point has this colour. */
    public boolean holds(RidgePoint point) {
        return point.contrastCosine(l, a, b) >= SAME_PAINT;
    }

    /** The colours of the points, the most common first; a point may belong to more than one, or to none. */
    public static List<PaintColour> among(List<RidgePoint> points) {
        List<RidgePoint> left = new ArrayList<>(points);
        double all = points.stream().mapToDouble(RidgePoint::strength).sum();
        List<PaintColour> colours = new ArrayList<>();
        while (colours.size() < MOST_COLOURS && !left.isEmpty()) {
            PaintColour colour = mostCommon(left);
            if (colour.weight < LEAST_SHARE * all) {
                break;
            }
            colours.add(colour);
            left.removeIf(colour::holds);
        }
        return colours;
    }

    /**
     * The one colour that most of the points have, by strength: from the best of evenly spread directions to the mean of its
     * cone, three times.
     *
     * @param points at least one
     */
    public static PaintColour mostCommon(List<RidgePoint> points) {
        PaintColour best = new PaintColour(1, 0, 0, -1);
        int count = 60;
        for (int i = 0; i < count; i++) {
            double z = 1 - (2 * i + 1.0) / count;
            double angle = Math.PI * (1 + Math.sqrt(5)) * i;
            double r = Math.sqrt(1 - z * z);
            PaintColour tried = centred(new PaintColour(z, r * Math.cos(angle), r * Math.sin(angle), 0), points);
            if (tried.weight > best.weight) {
                best = tried;
            }
        }
        for (int i = 0; i < 3; i++) {
            best = centred(best, points);
        }
        return best;
    }

    private static PaintColour centred(PaintColour about, List<RidgePoint> points) {
        double l = 0;
        double a = 0;
        double b = 0;
        double weight = 0;
        for (RidgePoint p : points) {
            if (about.holds(p)) {
                double length = Math.sqrt(
                        p.contrastL() * p.contrastL() + p.contrastA() * p.contrastA() + p.contrastB() * p.contrastB());
                double share = p.strength() / length;
                l += share * p.contrastL();
                a += share * p.contrastA();
                b += share * p.contrastB();
                weight += p.strength();
            }
        }
        double norm = Math.sqrt(l * l + a * a + b * b);
        return norm > 0 ? new PaintColour(l / norm, a / norm, b / norm, weight) : about;
    }
}
