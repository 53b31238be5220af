package floorgauge.eval.tracking;

import floorgauge.court.floor.FloorPoint;

/**
 * Similarity of two points on the floor: {@code max(0, 1 - d / zeroAtMetres)} with d their distance, as Luiten and others
 * (2021, "HOTA: a higher order metric for evaluating multi-object tracking", section on localisation) give it for points.
 *
 * @param zeroAtMetres distance at which nothing is left in common, above 0. A threshold of 0.5 then asks for half of it.
 */
public record FloorSimilarity(double zeroAtMetres) implements Similarity<FloorPoint> {

    /** Two metres: a threshold of 0.5 accepts one metre, about a stride. */
    public static final FloorSimilarity DEFAULT = new FloorSimilarity(2.0);

    public FloorSimilarity {
        if (!(zeroAtMetres > 0 && Double.isFinite(zeroAtMetres))) {
            throw new IllegalArgumentException("distance must be above 0: " + zeroAtMetres);
        }
    }

    @Override
    public double of(FloorPoint truth, FloorPoint result) {
        return Math.max(0, 1 - truth.distanceTo(result) / zeroAtMetres);
    }
}
