package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PointsFileTest {

    @TempDir
    Path folder;

    private List<CourtMark> points(String yaml) {
        return PointsFile.read(file(yaml)).marks(RuleSet.fiba(), 1280, 720);
    }

    private Path file(String yaml) {
        try {
            return Files.writeString(folder.resolve("court points é.yaml"), yaml);
        } catch (IOException unwritable) {
            throw new AssertionError(unwritable);
        }
    }

    private static final String HEAD = "picture: {width: 1280, height: 720}\npoints:\n";

    @Test
    void noSuchFile() {
        assertThatThrownBy(() -> PointsFile.read(folder.resolve("none.yaml")))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("none.yaml does not exist");
    }

    @Test
    void emptyFile() {
        assertThatThrownBy(() -> points("")).hasMessageContaining("is empty");
    }

    @Test
    void notYaml() {
        assertThatThrownBy(() -> points(HEAD + "  - {at: [")).hasMessageContaining("not readable as YAML");
    }

    @Test
    void noPictureSize() {
        assertThatThrownBy(() -> points("points: []")).hasMessageContaining("line 1: \"picture\" is missing");
        assertThatThrownBy(() -> points("picture: {width: 0, height: 720}\npoints: []"))
                .hasMessageContaining("whole number above 0");
    }

    @Test
    void unknownField() {
        assertThatThrownBy(() -> points(HEAD + "  - {at: centre, pixel: [1, 2], colour: red}"))
                .hasMessageContaining("line 3: \"colour\" is not a field here; there are at, metres, pixel");
    }

    @Test
    void unknownNameComesWithAHint() {
        assertThatThrownBy(() -> points(HEAD + "  - {at: right-elbow-neer, pixel: [1, 2]}"))
                .hasMessageContaining("line 3")
                .hasMessageContaining("did you mean right-elbow-near?");
        assertThatThrownBy(() -> points(HEAD + "  - {at: the-clock-on-the-wall, pixel: [1, 2]}"))
                .hasMessageContaining("names are listed");
    }

    @Test
    void oneNameTwice() {
        assertThatThrownBy(() -> points(HEAD + "  - {at: centre, pixel: [1, 2]}\n  - {at: centre, pixel: [5, 2]}\n"))
                .hasMessageContaining("line 4: centre was already marked in line 3");
    }

    @Test
    void offThePicture() {
        assertThatThrownBy(() -> points(HEAD + "  - {at: centre, pixel: [1280, 2]}"))
                .hasMessageContaining("line 3: pixel [1280.0, 2.0] lies off the picture, which is 1280 x 720");
    }

    @Test
    void notANumber() {
        assertThatThrownBy(() -> points(HEAD + "  - {at: centre, pixel: [NaN, 2]}"))
                .hasMessageContaining("line 3")
                .hasMessageContaining("finite number");
        assertThatThrownBy(() -> points(HEAD + "  - {at: centre, pixel: [left, 2]}"))
                .hasMessageContaining("expected a number, but found \"left\"");
        assertThatThrownBy(() -> points(HEAD + "  - {at: centre, pixel: [1, 2, 3]}"))
                .hasMessageContaining("two numbers");
    }

    @Test
    void nameOrPlaceButNotBoth() {
        assertThatThrownBy(() -> points(HEAD + "  - {pixel: [1, 2]}")).hasMessageContaining("either \"at\"");
        assertThatThrownBy(() -> points(HEAD + "  - {at: centre, metres: [0, 0], pixel: [1, 2]}"))
                .hasMessageContaining("not both");
    }

    @Test
    void anotherShapeOfPicture() {
        assertThatThrownBy(() -> PointsFile.read(file(HEAD + "  - {at: centre, pixel: [1, 2]}"))
                        .marks(RuleSet.fiba(), 720, 1280))
                .hasMessageContaining("not the shape of the film (720 x 1280)");
    }

    @Test
    void namesAndPlacesAreRead() {
        assertThat(points(HEAD + "  - {at: centre, pixel: [10, 20]}\n  - {metres: [3.5, -2], pixel: [30, 40]}\n"))
                .containsExactly(
                        new MarkedPoint("centre", new FloorPoint(0, 0), new PixelPoint(10, 20)),
                        new MarkedPoint("the point at [3.5, -2.0] m", new FloorPoint(3.5, -2), new PixelPoint(30, 40)));
    }

    @Test
    void pixelsAreScaledToTheFilmByTheirEdges() {
        List<CourtMark> halved = PointsFile.read(file(HEAD + "  - {at: centre, pixel: [-0.5, 719.5]}"))
                .marks(RuleSet.fiba(), 640, 360);
        assertThat(halved.get(0).pixel()).isEqualTo(new PixelPoint(-0.5, 359.5));
    }

    @Test
    void whatCannotBeFittedNamesTheFile() {
        PointsFile few = PointsFile.read(file(HEAD + "  - {at: centre, pixel: [10, 20]}"));
        assertThatThrownBy(() -> CourtCalibrator.fitPoints(RuleSet.fiba(), few, 1280, 720))
                .hasMessageContaining("court points é.yaml: a court needs at least four marked points");
    }
}
