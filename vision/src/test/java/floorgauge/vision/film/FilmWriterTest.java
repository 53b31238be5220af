package floorgauge.vision.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.calibration.OpenCv;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

class FilmWriterTest {

    @TempDir
    Path folder;

    @Test
    void anOddSizeIsStoredOnePixelLarger() {
        Path film = folder.resolve("odd.mp4");
        TestFilm.write(film, FilmSettings.of(101, 75, 25), TestFilm.steady(3, 25));
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            assertThat(reader.info().width()).isEqualTo(102);
            assertThat(reader.info().height()).isEqualTo(76);
            assertThat(reader.read(frame)).isTrue();
            assertThat(frame.bgr().get(10, 10)[2]).isGreaterThan(180);
        }
    }

    @Test
    void theIndexComesFirst() throws IOException {
        Path film = folder.resolve("first.mp4");
        TestFilm.write(film, FilmSettings.of(64, 48, 25), TestFilm.steady(5, 25));
        String bytes = new String(Files.readAllBytes(film), StandardCharsets.ISO_8859_1);
        assertThat(bytes.indexOf("moov")).isPositive().isLessThan(bytes.indexOf("mdat"));
    }

    @Test
    void theSamePicturesGiveTheSameBytes() throws IOException {
        Path first = folder.resolve("a.mp4");
        Path second = folder.resolve("b.mp4");
        TestFilm.write(first, FilmSettings.of(160, 96, 25), TestFilm.steady(20, 25));
        TestFilm.write(second, FilmSettings.of(160, 96, 25), TestFilm.steady(20, 25));
        assertThat(Files.mismatch(first, second)).isEqualTo(-1);
    }

    @Test
    void aLowerBitRateMakesASmallerFile() throws IOException {
        Path rich = folder.resolve("rich.mp4");
        Path poor = folder.resolve("poor.mp4");
        FilmSettings settings = FilmSettings.of(320, 192, 25);
        writeNoise(rich, settings.withBitsPerSecond(4_000_000));
        writeNoise(poor, settings.withBitsPerSecond(400_000));
        assertThat(Files.size(poor)).isLessThan(Files.size(rich));
        assertThat(TestFilm.times(poor))
                .as("no picture is skipped to keep the rate")
                .hasSize(50);
    }

    private static void writeNoise(Path film, FilmSettings settings) {
        OpenCv.load();
        Mat noise = new Mat(settings.height(), settings.width(), CvType.CV_8UC3);
        Core.setRNGSeed(7);
        try (FilmWriter writer = FilmWriter.create(film, settings)) {
            for (double time : TestFilm.steady(50, 25)) {
                Core.randu(noise, 0, 255);
                writer.write(noise, time);
            }
        }
    }

    @Test
    void aPlaceThatCannotBeWrittenIsSaidSo() {
        assertThatThrownBy(
                        () -> FilmWriter.create(folder.resolve("none").resolve("x.mp4"), FilmSettings.of(64, 48, 25)))
                .isInstanceOf(FilmException.class)
                .hasMessageContaining("cannot be written");
    }

    @Test
    void picturesOfAnotherSizeOrTimesThatGoBackAreBugs() {
        try (FilmWriter writer = FilmWriter.create(folder.resolve("x.mp4"), FilmSettings.of(64, 48, 25))) {
            Mat small = new Mat(10, 10, CvType.CV_8UC3);
            assertThatThrownBy(() -> writer.write(small, 0)).isInstanceOf(IllegalArgumentException.class);
            writer.write(TestFilm.picture(64, 48, 0), 0.04);
            assertThatThrownBy(() -> writer.write(TestFilm.picture(64, 48, 1), 0.04))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void impossibleSettingsAreRefused() {
        assertThatThrownBy(() -> FilmSettings.of(8, 48, 25)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> FilmSettings.of(64, 48, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> FilmSettings.of(64, 48, 25).withRotationDegrees(45))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
