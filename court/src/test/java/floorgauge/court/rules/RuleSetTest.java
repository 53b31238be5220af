package floorgauge.court.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorPoint;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The painted lines, measured on their edges, against the rule books' own figures. */
class RuleSetTest {

    private static final double FOOT = 0.3048;

    private static PaintedLine line(RuleSet rules, String name) {
        return rules.paintedLines().stream()
                .filter(l -> l.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static PaintedLine.Straight straight(RuleSet rules, String name) {
        return (PaintedLine.Straight) line(rules, name);
    }

    /** FIBA Official Basketball Rules, art. 2.1: 28 m by 15 m from the inner edges of the boundary lines (secondary). */
    @Test
    void fibaCourtIsMeasuredBetweenInnerEdges() {
        RuleSet fiba = RuleSet.fiba();
        double inner = straight(fiba, "side-line-positive").from().yMetres() - fiba.lineWidthMetres() / 2;
        assertThat(2 * inner).isCloseTo(15, within(1e-9));
        double end = straight(fiba, "positive-end-end-line").from().xMetres() - fiba.lineWidthMetres() / 2;
        assertThat(2 * end).isCloseTo(28, within(1e-9));
    }

    /** Art. 2.4.3: the free-throw line's far edge lies 5.80 m from the inner end line and it is 3.60 m long (quoted). */
    @Test
    void fibaFreeThrowLine() {
        RuleSet fiba = RuleSet.fiba();
        PaintedLine.Straight line = straight(fiba, "positive-end-free-throw-line");
        double farEdge = line.from().xMetres() - fiba.lineWidthMetres() / 2;
        assertThat(14 - farEdge).isCloseTo(5.80, within(1e-9));
        // The line itself ends at the half circle, whose outer radius is 1.80 m.
        assertThat(2 * fiba.circleRadiusMetres()).isCloseTo(3.60, within(1e-9));
    }

    /** Art. 2.4.4: 6.75 m to the outer edge; straights 0.90 m from the side line, so 6.60 m from the rim's line. */
    @Test
    void fibaThreePointLine() {
        RuleSet fiba = RuleSet.fiba();
        PaintedLine.Arc arc = (PaintedLine.Arc) line(fiba, "positive-end-three-point-arc");
        assertThat(arc.radiusMetres() + fiba.lineWidthMetres() / 2).isCloseTo(6.75, within(1e-9));
        PaintedLine.Straight corner = straight(fiba, "positive-end-three-point-straight-positive");
        assertThat(corner.from().yMetres() + fiba.lineWidthMetres() / 2).isCloseTo(6.60, within(1e-9));
        assertThat(arc.centre().distanceTo(new FloorPoint(14 - 1.575, 0))).isLessThan(1e-9);
    }

    /** NBA rule 1, section I.d (quoted): 23 feet 9 inches, and straights 3 feet from the side lines. */
    @Test
    void nbaThreePointLine() {
        RuleSet nba = RuleSet.nba();
        PaintedLine.Straight corner = straight(nba, "positive-end-three-point-straight-positive");
        double outer = corner.from().yMetres() + nba.lineWidthMetres() / 2;
        assertThat(25 * FOOT - outer).isCloseTo(3 * FOOT, within(1e-9));
        assertThat(nba.threePointRadiusMetres()).isCloseTo(7.239, within(1e-3));
    }

    /** NFHS rule 1-4 (quoted): 19 feet 9 inches to the outer edge, then 63 inches straight to the end line. */
    @Test
    void nfhsThreePointLineTurnsStraightAtTheRim() {
        RuleSet nfhs = RuleSet.nfhs();
        PaintedLine.Straight corner = straight(nfhs, "positive-end-three-point-straight-positive");
        assertThat(corner.from().distanceTo(corner.to())).isCloseTo(63 * 0.0254, within(1e-6));
    }

    /** A straight meets its arc where the arc ends, in every book. */
    @Test
    void arcsAndStraightsMeet() {
        for (RuleSet rules : RuleSet.all()) {
            PaintedLine.Arc arc = (PaintedLine.Arc) line(rules, "negative-end-three-point-arc");
            List<FloorPoint> ends = List.of(arc.at(0), arc.at(1));
            for (String side : List.of("negative", "positive")) {
                FloorPoint end = straight(rules, "negative-end-three-point-straight-" + side)
                        .to();
                double gap = ends.stream().mapToDouble(end::distanceTo).min().orElseThrow();
                assertThat(gap).as(rules.name() + " " + side).isLessThan(1e-6);
            }
        }
    }

    @Test
    void everyLineHasItsOwnName() {
        for (RuleSet rules : RuleSet.all()) {
            List<String> names =
                    rules.paintedLines().stream().map(PaintedLine::name).toList();
            assertThat(names).doesNotHaveDuplicates();
            assertThat(CourtPoints.of(rules).stream().map(CourtPoint::name).toList())
                    .doesNotHaveDuplicates();
        }
    }

    /** Each named point lies on the middle of a painted line, but for the middle of the court's own centre line. */
    @Test
    void namedPointsLieOnPaint() {
        for (RuleSet rules : RuleSet.all()) {
            for (CourtPoint point : CourtPoints.of(rules)) {
                double nearest = rules.paintedLines().stream()
                        .mapToDouble(l -> distance(l, point.floor()))
                        .min()
                        .orElseThrow();
                // The end-line points stand on the end line's middle; lines that meet it begin at its inner edge.
                assertThat(nearest).as(rules.name() + " " + point.name()).isLessThan(1e-6);
            }
        }
    }

    private static double distance(PaintedLine line, FloorPoint p) {
        if (line instanceof PaintedLine.Arc arc) {
            return Math.abs(p.distanceTo(arc.centre()) - arc.radiusMetres());
        }
        PaintedLine.Straight s = (PaintedLine.Straight) line;
        double dx = s.to().xMetres() - s.from().xMetres();
        double dy = s.to().yMetres() - s.from().yMetres();
        double t = ((p.xMetres() - s.from().xMetres()) * dx
                        + (p.yMetres() - s.from().yMetres()) * dy)
                / (dx * dx + dy * dy);
        double held = Math.max(0, Math.min(1, t));
        return p.distanceTo(
                new FloorPoint(s.from().xMetres() + held * dx, s.from().yMetres() + held * dy));
    }
}
