package floorgauge.app.chain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.app.MotionJpegFilm;
import floorgauge.court.calibration.OpenCv;
import floorgauge.court.failure.MendableException;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;

class LightCopiesTest {

    private static final String SHA256 = "0123456789abcdef".repeat(4);

    @TempDir
    private Path folder;

    @BeforeAll
    static void load() {
        OpenCv.load();
    }

    @Test
    void whatIsNoFilmIsSaidInOneLine() throws IOException {
        Path notes = Files.writeString(folder.resolve("notes.avi"), "no film");
        LightCopies copies = new LightCopies(folder.resolve("play"));
        assertThatThrownBy(() -> copies.make(notes, SHA256)).isInstanceOf(MendableException.class);
        assertThat(copies.made(SHA256)).isEmpty();
    }

    @Test
    void aFilmThatBrowsersPlayNeedsNoCopy() {
        Path film = folder.resolve("h264.mp4");
        try (FilmWriter writer = FilmWriter.create(film, FilmSettings.of(64, 48, 25))) {
            Mat grey = new Mat(48, 64, CvType.CV_8UC3, Scalar.all(90));
            writer.write(grey, 0);
            writer.write(grey, 0.04);
            grey.release();
        }
        assertThat(LightCopies.isPlayable(film)).isTrue();
    }

    @Test
    void theCopyIsPlayableAndKeepsEveryPictureAndTime() {
        Path film = motionJpeg();
        assertThat(LightCopies.isPlayable(film)).isFalse();
        LightCopies copies = new LightCopies(folder.resolve("play"));
        Path copy = copies.make(film, SHA256);
        assertThat(LightCopies.isPlayable(copy)).isTrue();
        assertThat(copies.made(SHA256)).contains(copy);
        try (FilmReader one = FilmReader.open(film);
                FilmReader other = FilmReader.open(copy);
                FilmFrame a = new FilmFrame();
                FilmFrame b = new FilmFrame()) {
            for (int i = 0; i < MotionJpegFilm.PICTURES; i++) {
                assertThat(one.read(a)).isTrue();
                assertThat(other.read(b)).isTrue();
                assertThat(b.timeSeconds()).isCloseTo(a.timeSeconds(), within(1e-4));
                assertThat(Core.mean(b.bgr()).val[0]).isCloseTo(Core.mean(a.bgr()).val[0], within(4.0));
            }
            assertThat(other.read(b)).isFalse();
        }
    }

    /** ISO/IEC 14496-12: a file is a row of boxes of a length and a name; the index (moov) must stand before the pictures (mdat). */
    @Test
    void theIndexComesFirst() throws IOException {
        byte[] copy = Files.readAllBytes(new LightCopies(folder.resolve("play")).make(motionJpeg(), SHA256));
        String text = new String(copy, StandardCharsets.ISO_8859_1);
        assertThat(text.substring(4, 8)).isEqualTo("ftyp");
        assertThat(text.indexOf("moov")).isBetween(1, text.indexOf("mdat"));
    }

    @Test
    void itIsMadeOnceAndWhatWasLeftHalfMadeIsNotTaken() throws IOException {
        LightCopies copies = new LightCopies(folder.resolve("play"));
        Files.createDirectories(folder.resolve("play"));
        Files.writeString(folder.resolve("play/.0123456789abcdef.mp4.partial"), "half");
        assertThat(copies.made(SHA256)).isEmpty();
        Path film = motionJpeg();
        Path copy = copies.make(film, SHA256);
        Files.delete(film);
        assertThat(copies.make(film, SHA256)).isEqualTo(copy);
        try (var files = Files.list(folder.resolve("play"))) {
            assertThat(files).containsExactly(copy);
        }
    }

    private Path motionJpeg() {
        return MotionJpegFilm.write(folder.resolve("camera.avi"));
    }
}
