package floorgauge.events.diagram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

class PolylineTest {

    @Test
    void aLineOfOnePlaceHasNoLengthAndADirection() {
        List<double[]> line = List.of(new double[] {1, 1}, new double[] {1, 1});
        assertThat(Polyline.length(line)).isZero();
        assertThat(Polyline.direction(line, 0, 1)).containsExactly(1, 0);
        assertThat(Polyline.at(line, 3)).containsExactly(1, 1);
    }

    @Test
    void twoPointsAreAsSimpleAndAsRoundAsCanBe() {
        List<double[]> line = List.of(new double[] {0, 0}, new double[] {3, 4});
        assertThat(Polyline.simplified(line, 1)).hasSize(2);
        assertThat(Polyline.round(line, 1)).hasSize(2);
        assertThat(Polyline.length(line)).isEqualTo(5);
    }

    @Test
    void aPieceHasItsLength() {
        List<double[]> line = List.of(new double[] {0, 0}, new double[] {4, 0}, new double[] {4, 6});
        List<double[]> piece = Polyline.piece(line, 1, 7);
        assertThat(Polyline.length(piece)).isEqualTo(6, within(1e-12));
        assertThat(piece.get(piece.size() - 1)).containsExactly(4, 3);
    }

    /** The JTS Topology Suite's simplifier is the reference. */
    @Test
    void simplifyingAgreesWithJts() {
        List<double[]> line = new ArrayList<>();
        for (int i = 0; i <= 60; i++) {
            line.add(new double[] {i * 0.2, Math.sin(i * 0.31) + 0.05 * Math.cos(i * 2.7)});
        }
        Coordinate[] simple = DouglasPeuckerSimplifier.simplify(
                        new GeometryFactory()
                                .createLineString(line.stream()
                                        .map(p -> new Coordinate(p[0], p[1]))
                                        .toArray(Coordinate[]::new)),
                        0.15)
                .getCoordinates();
        List<double[]> own = Polyline.simplified(line, 0.15);
        assertThat(own).hasSize(simple.length);
        for (int i = 0; i < simple.length; i++) {
            assertThat(own.get(i)).containsExactly(simple[i].x, simple[i].y);
        }
    }

    @Test
    void aRoundLineGoesThroughItsPoints() {
        List<double[]> line = List.of(
                new double[] {0, 0}, new double[] {4, 1}, new double[] {5, 6}, new double[] {5, 6}, new double[] {9, 7
                });
        List<double[]> round = Polyline.round(line, 0.25);
        for (double[] point : line) {
            assertThat(Polyline.distance(point, round)).isLessThan(1e-6);
        }
        assertThat(round)
                .allSatisfy(p -> assertThat(Double.isFinite(p[0]) && Double.isFinite(p[1]))
                        .isTrue());
    }

    @Test
    void aZigzagStaysNearItsLineAndKeepsItsEnds() {
        List<double[]> line = List.of(new double[] {0, 0}, new double[] {20, 0});
        List<double[]> zigzag = Polyline.zigzag(line, 0.6, 1.2, 0.5, 2);
        assertThat(zigzag.get(0)).containsExactly(0, 0);
        assertThat(zigzag.get(zigzag.size() - 1)).containsExactly(20, 0);
        assertThat(zigzag).allSatisfy(p -> assertThat(Math.abs(p[1])).isLessThanOrEqualTo(0.6));
        assertThat(Polyline.crossings(zigzag, List.of(new double[] {0, 0.001}, new double[] {20, 0.001})))
                .isGreaterThan(8);
    }
}
