package floorgauge.sampleclips.render.body;

import floorgauge.sampleclips.render.value.Vec3;

/**
 * Two bones from a root over a hinge to an end.
 *
 * @param root shoulder or hip
 * @param hinge elbow or knee
 * @param end wrist or ankle
 */
public record Limb(Vec3 root, Vec3 hinge, Vec3 end) {

    private static final double LONGEST = 0.9995;

    /**
     * Bends a limb so that its end comes to a target, or as near as it reaches: cosine rule, the hinge turned towards a
     * pole.
     */
    static Limb reach(Vec3 root, Vec3 target, double first, double second, Vec3 pole) {
        Vec3 to = target.minus(root);
        double longest = (first + second) * LONGEST;
        double shortest = Math.abs(first - second) + 0.12 * (first + second);
        double d = Math.max(shortest, Math.min(longest, to.length()));
        Vec3 axis = to.unit();
        double along = (first * first + d * d - second * second) / (2 * d);
        double off = Math.sqrt(Math.max(0, first * first - along * along));
        Vec3 hinge = root.plus(along, axis).plus(off, pole.squaredTo(axis));
        return new Limb(root, hinge, root.plus(d, axis));
    }
}
