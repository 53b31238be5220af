package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.CourtLines;
import floorgauge.court.rules.CourtPoints;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Places on named lines in place of points, and the lens that many marks can carry. */
class MarkedLinesTest {

    private static final PlanarScene SCENE = PlanarScene.halfCourt();

    private static final String[] FOUR = {
        "right-lane-line-near", "right-lane-line-far", "right-free-throw-line", "right-end-line"
    };

    @TempDir
    Path folder;

    /** Places along a line that are in the picture, with noise. */
    private static List<MarkedPlace> places(PlanarScene scene, String name, int most, double noise, Random random) {
        PaintedLine line = CourtLines.named(scene.rules, name).orElseThrow();
        List<double[]> seen = new ArrayList<>();
        for (FloorPoint at : CourtOverlay.samples(line, 0.5)) {
            double[] film = scene.film(at.xMetres(), at.yMetres(), 0);
            if (scene.inPicture(film)) {
                seen.add(film);
            }
        }
        List<MarkedPlace> places = new ArrayList<>();
        for (int i = 0; i < most && seen.size() >= most; i++) {
            double[] film = seen.get(i * (seen.size() - 1) / Math.max(1, most - 1));
            places.add(new MarkedPlace(
                    name + ", place " + (i + 1),
                    line,
                    new PixelPoint(film[0] + noise * random.nextGaussian(), film[1] + noise * random.nextGaussian())));
        }
        return places;
    }

    private static List<CourtMark> marks(PlanarScene scene, String[] names, int most, double noise, Random random) {
        List<CourtMark> marks = new ArrayList<>();
        for (String name : names) {
            marks.addAll(places(scene, name, most, noise, random));
        }
        return marks;
    }

    private static PointsFit fit(PlanarScene scene, List<CourtMark> marks) {
        return CourtCalibrator.fitPoints(scene.rules, marks, scene.width, scene.height);
    }

    @Test
    void tooFewLines() {
        String[] two = {"right-end-line", "right-lane-line-near"};
        assertThatThrownBy(() -> fit(SCENE, marks(SCENE, two, 5, 0, new Random(1))))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("settle 4 of the court's 8 figures");
    }

    @Test
    void arcsAloneBeginNoCourt() {
        String[] arcs = {"right-three-point-arc", "right-free-throw-circle"};
        assertThatThrownBy(() -> fit(SCENE, marks(SCENE, arcs, 6, 0, new Random(1))))
                .hasMessageContaining("settle 0 of the court's 8 figures");
    }

    @Test
    void linesOfOneDirectionLeaveThePlaceOpen() {
        String[] along = {
            "right-lane-line-near",
            "right-lane-line-far",
            "side-line-near",
            "side-line-far",
            "right-three-point-straight-far"
        };
        List<CourtMark> marks = new ArrayList<>();
        for (String name : along) {
            PaintedLine line = CourtLines.named(SCENE.rules, name).orElseThrow();
            for (double x : new double[] {6, 9, 12}) {
                FloorPoint on = line.nearestTo(new FloorPoint(x, 0));
                double[] film = SCENE.film(on.xMetres(), on.yMetres(), 0);
                if (SCENE.inPicture(film)) {
                    marks.add(new MarkedPlace(name + " " + x, line, new PixelPoint(film[0], film[1])));
                }
            }
        }
        assertThatThrownBy(() -> fit(SCENE, marks)).hasMessageContaining("run the same way");
    }

    @Test
    void fourLinesOfTheLanePlaceTheCourt() {
        PointsFit fit = fit(SCENE, marks(SCENE, FOUR, 2, 0, new Random(1)));
        assertThat(fit.calibration().status()).isEqualTo(CalibrationStatus.WEAK);
        assertThat(fit.calibration().reason()).contains("nothing checks them");
        for (FloorPoint at : List.of(new FloorPoint(12, 0), new FloorPoint(9, 2), new FloorPoint(10, -2))) {
            double[] film = SCENE.film(at.xMetres(), at.yMetres(), 0);
            assertThat(fit.calibration()
                            .floorAt(new PixelPoint(film[0], film[1]), 0, 0)
                            .mean()
                            .distanceTo(at))
                    .isLessThan(1e-4);
        }
    }

    @Test
    void pointsAndPlacesOnArcsAreFittedTogether() {
        Random random = new Random(5);
        List<CourtMark> marks = marks(SCENE, FOUR, 4, 0.7, random);
        marks.addAll(places(SCENE, "right-three-point-arc", 5, 0.7, random));
        CourtPoints.named(SCENE.rules, "right-corner-far").ifPresent(point -> {
            double[] film = SCENE.film(point.floor().xMetres(), point.floor().yMetres(), 0);
            if (SCENE.inPicture(film)) {
                marks.add(new MarkedPoint(point.name(), point.floor(), new PixelPoint(film[0], film[1])));
            }
        });
        PointsFit fit = fit(SCENE, marks);
        assertThat(fit.calibration().status()).isEqualTo(CalibrationStatus.GOOD);
        assertThat(fit.suspect()).isEmpty();
        double[] film = SCENE.film(9, 2, 0);
        assertThat(fit.calibration()
                        .floorAt(new PixelPoint(film[0], film[1]), 0, 0)
                        .mean()
                        .distanceTo(new FloorPoint(9, 2)))
                .isLessThan(0.10);
    }

    @Test
    void aPlaceOnTheWrongLineIsSuspect() {
        Random random = new Random(7);
        List<CourtMark> marks = marks(SCENE, FOUR, 4, 0.5, random);
        MarkedPlace first = (MarkedPlace) marks.get(1);
        marks.set(
                1,
                new MarkedPlace(
                        first.label(),
                        first.line(),
                        new PixelPoint(first.pixel().x() + 25, first.pixel().y() + 25)));
        PointsFit fit = fit(SCENE, marks);
        assertThat(fit.suspect()).contains(first.label());
    }

    @Test
    void manyMarksCarryTheLens() {
        PlanarScene barrel = PlanarScene.halfCourtThroughBarrelLens();
        String[] names = {
            "right-lane-line-near",
            "right-lane-line-far",
            "right-free-throw-line",
            "right-end-line",
            "side-line-far",
            "centre-line"
        };
        PointsFit fit = fit(barrel, marks(barrel, names, 6, 0, new Random(1)));
        assertThat(fit.calibration().projection().orElseThrow().lens().k())
                .isCloseTo(barrel.projection().lens().k(), within(0.02));
    }

    private PointsFile file(String yaml) throws IOException {
        return PointsFile.read(Files.writeString(folder.resolve("lines.yaml"), yaml));
    }

    private static final String HEAD = "picture: {width: 1280, height: 720}\nlines:\n";

    @Test
    void placesAreReadFromTheFile() throws IOException {
        List<CourtMark> marks = file(HEAD + "  - {along: right-end-line, pixels: [[10, 20], [30, 40]]}\n")
                .marks(RuleSet.fiba(), 1280, 720);
        assertThat(marks).hasSize(2);
        assertThat(marks.get(1).label()).isEqualTo("right-end-line, place 2");
        assertThat(marks.get(1).pixel()).isEqualTo(new PixelPoint(30, 40));
    }

    @Test
    void wrongEntriesNameTheirLine() throws IOException {
        assertComplaint("  - {along: right-end-lime, pixels: [[1, 2]]}", "line 3", "did you mean right-end-line?");
        assertComplaint("  - {along: the-clock-on-the-wall, pixels: [[1, 2]]}", "line 3", "names are listed");
        assertComplaint(
                "  - {along: centre-line, pixels: [[1, 2]]}\n  - {along: centre-line, pixels: [[5, 2]]}",
                "line 4",
                "already marked in line 3");
        assertComplaint("  - {along: centre-line, pixels: [[1, 2], [1, 2]]}", "line 3", "same as one before");
        assertComplaint("  - {along: centre-line, pixels: [[1, 720]]}", "line 3", "lies off the picture");
        assertComplaint("  - {along: centre-line, pixels: [[NaN, 2]]}", "line 3", "finite number");
        assertComplaint("  - {along: centre-line, pixels: []}", "line 3", "has no places");
        assertComplaint("  - {along: centre-line}", "line 3", "\"pixels\" is missing");
    }

    private void assertComplaint(String entries, String... parts) throws IOException {
        PointsFile file = file(HEAD + entries + "\n");
        for (String part : parts) {
            assertThatThrownBy(() -> file.marks(RuleSet.fiba(), 1280, 720))
                    .isInstanceOf(MendableException.class)
                    .hasMessageContaining(part);
        }
    }

    @Test
    void everyLineHasANameOfItsOwn() {
        for (RuleSet rules : RuleSet.all()) {
            assertThat(CourtLines.of(rules).stream().map(CourtLines::nameOf))
                    .as(rules.name())
                    .doesNotHaveDuplicates()
                    .noneMatch(name -> name.contains("negative") || name.contains("positive"));
        }
    }
}
