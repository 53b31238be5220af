package floorgauge.app.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.InventedFilm;
import floorgauge.app.drawing.Crop;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.court.calibration.OpenCv;
import floorgauge.court.track.FloorFrame;
import floorgauge.events.finding.Finding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Scalar;
import org.opencv.imgcodecs.Imgcodecs;

/** The sheet of the invented film is left in the build folder to be looked at. */
class SheetTest {

    private static final Path FOLDER = Path.of("target", "sheet-test");

    @BeforeAll
    static void load() throws IOException {
        OpenCv.load();
        Files.createDirectories(FOLDER);
    }

    @Test
    void thePageStandsAlone() throws IOException {
        String page = write("sheet.html");
        assertThat(page).startsWith("<!DOCTYPE html>").contains("<html lang=\"en\">");
        assertThat(page).doesNotContain("<script").doesNotContain("<link").doesNotContain("@import");
        Matcher references = Pattern.compile("(?:href|src)=\"([^\"]*)\"").matcher(page);
        while (references.find()) {
            assertThat(references.group(1)).matches(r -> r.startsWith("#") || r.startsWith("data:image/jpeg;base64,"));
        }
    }

    @Test
    void everyFindingStandsOnItWithItsSentenceFramesAndFigures() throws IOException {
        String page = write("sheet.html");
        for (Finding finding : InventedFilm.measured().findings().all()) {
            assertThat(page).contains(finding.sentence().replace("'", "&#39;"));
            finding.figures()
                    .forEach(f -> assertThat(page).contains(">" + f.name().replace("'", "&#39;") + "<"));
        }
        assertThat(count(page, "class=\"frame\"")).isEqualTo(6);
        assertThat(count(page, "<article")).isEqualTo(2);
        assertThat(page)
                .contains("0.42\u00a0±\u00a00.08\u00a0m")
                .contains("sure to 9 in 10")
                .contains("Not tracked.");
    }

    @Test
    void namesCannotBreakOutOfTheirPlace() throws IOException {
        String page = write("sheet.html");
        assertThat(page).doesNotContain("<practice>").contains("&lt;practice&gt; &amp; &quot;drill&quot;");
    }

    @Test
    void everyPictureHasATextEquivalentAndEveryReferenceItsTarget() throws IOException {
        String page = write("sheet.html");
        int inLegend = 6;
        assertThat(count(page, "<svg xmlns")).isEqualTo(count(page, "role=\"img\" aria-label=\"") + inLegend);
        assertThat(page).doesNotContain("aria-label=\"\"");
        Matcher targets = Pattern.compile("(?:href=\"#|url\\(#)([a-z0-9-]+)").matcher(page);
        int found = 0;
        while (targets.find()) {
            assertThat(page).contains("id=\"" + targets.group(1) + "\"");
            found++;
        }
        assertThat(found).isGreaterThan(2);
    }

    @Test
    void theSameFilmGivesTheSameBytes() throws IOException {
        assertThat(write("a.html")).isEqualTo(write("b.html"));
    }

    private static String write(String name) throws IOException {
        MeasuredFilm film = InventedFilm.measured();
        List<List<ShownFrame>> frames =
                film.findings().all().stream().map(f -> frames(film, f)).toList();
        Path file = FOLDER.resolve(name);
        Sheet.write(film, frames, new SheetThresholds(2.4, 28), file);
        return Files.readString(file);
    }

    private static List<ShownFrame> frames(MeasuredFilm film, Finding finding) {
        return finding.frames().stream()
                .map(key -> {
                    FloorFrame frame = film.tracks()
                            .frames()
                            .filter(f -> f.timeSeconds() >= key.timeSeconds() - 1e-6)
                            .findFirst()
                            .orElseThrow();
                    Crop crop = Crop.around(
                            frame.players().stream()
                                    .filter(p -> finding.roles().stream().anyMatch(r -> r.trackId() == p.trackId()))
                                    .map(p -> p.observation().box().orElseThrow())
                                    .toList(),
                            InventedFilm.WIDTH,
                            InventedFilm.HEIGHT);
                    return ShownFrame.of(key, frame, crop, plainPicture(crop));
                })
                .toList();
    }

    private static byte[] plainPicture(Crop crop) {
        Mat picture = new Mat(crop.height(), crop.width(), CvType.CV_8UC3, new Scalar(110, 150, 190));
        MatOfByte jpeg = new MatOfByte();
        Imgcodecs.imencode(".jpg", picture, jpeg);
        return jpeg.toArray();
    }

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part), -1).length - 1;
    }
}
