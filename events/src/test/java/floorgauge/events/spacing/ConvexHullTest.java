package floorgauge.events.spacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

class ConvexHullTest {

    private static final long SEED = 5;

    @Test
    void tooFewOrCollinearPointsHaveNoArea() {
        assertThat(ConvexHull.area(new double[][] {})).isZero();
        assertThat(ConvexHull.area(new double[][] {{1, 1}})).isZero();
        assertThat(ConvexHull.area(new double[][] {{1, 1}, {2, 2}})).isZero();
        assertThat(ConvexHull.area(new double[][] {{1, 1}, {2, 2}, {3, 3}, {0, 0}}))
                .isZero();
        assertThat(ConvexHull.area(new double[][] {{1, 1}, {1, 1}, {1, 1}, {1, 1}}))
                .isZero();
    }

    /** JTS 1.20.0, ConvexHull, is the reference. */
    @Test
    void areaAgreesWithJts() {
        Random random = new Random(SEED);
        for (int k = 0; k < 500; k++) {
            double[][] points = new double[3 + random.nextInt(8)][];
            for (int i = 0; i < points.length; i++) {
                points[i] = new double[] {random.nextInt(14), random.nextInt(15) - 7.5};
            }
            Coordinate[] coordinates =
                    Arrays.stream(points).map(p -> new Coordinate(p[0], p[1])).toArray(Coordinate[]::new);
            double reference = new GeometryFactory()
                    .createMultiPointFromCoords(coordinates)
                    .convexHull()
                    .getArea();
            assertThat(ConvexHull.area(points)).as("seed %d, case %d", SEED, k).isCloseTo(reference, within(1e-9));
        }
    }
}
