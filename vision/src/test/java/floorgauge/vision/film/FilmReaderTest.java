package floorgauge.vision.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.calibration.OpenCv;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.videoio.VideoCapture;
import org.opencv.videoio.VideoWriter;
import org.opencv.videoio.Videoio;

class FilmReaderTest {

    @TempDir
    Path folder;

    @Test
    void aMissingFileIsSaidSo() {
        assertRefused(folder.resolve("none.mp4"), "no such file");
    }

    @Test
    void aFolderIsSaidSo() {
        assertRefused(folder, "is a folder");
    }

    @Test
    void anEmptyFileIsSaidSo() throws IOException {
        assertRefused(Files.createFile(folder.resolve("empty.mp4")), "is an empty file");
    }

    @Test
    void textIsNoFilmWhateverItsName() throws IOException {
        String text = "Practice plan for Tuesday\n".repeat(100);
        assertRefused(Files.writeString(folder.resolve("plan.mp4"), text), "not a film");
        assertRefused(Files.writeString(folder.resolve("plan.txt"), text), "not a film");
    }

    @Test
    void aStillPictureIsNoFilm() {
        OpenCv.load();
        Path still = folder.resolve("still.png");
        Imgcodecs.imwrite(still.toString(), TestFilm.picture(64, 48, 0));
        assertRefused(still, "not a film");
    }

    @Test
    void soundAloneIsNoFilm() throws IOException {
        Path sound = folder.resolve("whistle.wav");
        AudioFormat format = new AudioFormat(8000, 16, 1, true, false);
        byte[] silence = new byte[16000];
        AudioSystem.write(
                new AudioInputStream(new ByteArrayInputStream(silence), format, 8000),
                AudioFileFormat.Type.WAVE,
                sound.toFile());
        assertRefused(sound, "holds no moving picture");
    }

    @Test
    void aPlayListIsNotFollowed() throws IOException {
        Path film = folder.resolve("real.mp4");
        TestFilm.write(film, FilmSettings.of(64, 48, 25), TestFilm.steady(3, 25));
        Path list = Files.writeString(
                folder.resolve("list.m3u8"),
                "#EXTM3U\n#EXT-X-TARGETDURATION:1\n#EXTINF:1,\nreal.mp4\n#EXT-X-ENDLIST\n");
        assertRefused(list, "not a film");
    }

    @Test
    void aFilmWithoutPicturesIsRefused() {
        Path film = folder.resolve("nothing.mp4");
        TestFilm.write(film, FilmSettings.of(64, 48, 25));
        assertThatThrownBy(() -> FilmReader.open(film))
                .isInstanceOf(FilmException.class)
                .hasMessageContaining("nothing.mp4");
    }

    @Test
    void aFilmOfOnePictureIsRead() {
        Path film = folder.resolve("one.mp4");
        TestFilm.write(film, FilmSettings.of(64, 48, 25), 0);
        assertThat(TestFilm.times(film)).containsExactly(0.0);
    }

    @Test
    void theDescriptionAndEveryPictureComeBack() {
        Path film = folder.resolve("plain.mp4");
        TestFilm.write(film, FilmSettings.of(160, 96, 25), TestFilm.steady(30, 25));
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            FilmInfo info = reader.info();
            assertThat(info.width()).isEqualTo(160);
            assertThat(info.height()).isEqualTo(96);
            assertThat(info.codec()).isEqualTo("h264");
            assertThat(info.container()).isEqualTo("mov");
            assertThat(info.durationSeconds()).isCloseTo(1.2, within(0.001));
            assertThat(info.estimatedFrameCount()).isEqualTo(30);
            assertThat(info.nominalFramesPerSecond()).isCloseTo(25, within(0.01));
            int count = 0;
            while (reader.read(frame)) {
                assertThat(frame.index()).isEqualTo(count);
                assertThat(frame.timeSeconds()).isCloseTo(count / 25.0, within(1e-9));
                Mat drawn = TestFilm.picture(160, 96, count);
                assertThat(meanDifference(frame.bgr(), drawn)).isLessThan(4);
                count++;
            }
            assertThat(count).isEqualTo(30);
            assertThat(reader.read(frame)).isFalse();
            assertThat(reader.shortfall().isNone()).isTrue();
            assertThat(reader.shortfall().sentence()).isEmpty();
        }
    }

    @Test
    void unevenTimesAreKept() {
        Path film = folder.resolve("uneven.mp4");
        double[] times = {0, 0.04, 0.05, 0.3, 0.301, 1.7, 1.75};
        TestFilm.write(film, FilmSettings.of(64, 48, 25), times);
        List<Double> read = TestFilm.times(film);
        assertThat(read).hasSize(times.length);
        for (int i = 0; i < times.length; i++) {
            assertThat(read.get(i)).isCloseTo(times[i], within(0.5 / 90_000));
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 160, 96, 0, 0", "90, 96, 160, 95, 0", "180, 160, 96, 159, 95", "270, 96, 160, 0, 159"})
    void theRotationFlagIsApplied(int degrees, int width, int height, int cornerX, int cornerY) {
        Path film = folder.resolve("turned" + degrees + ".mp4");
        TestFilm.write(film, FilmSettings.of(160, 96, 25).withRotationDegrees(degrees), TestFilm.steady(3, 25));
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            assertThat(reader.info().rotationDegrees()).isEqualTo(degrees);
            assertThat(reader.info().storedWidth()).isEqualTo(160);
            assertThat(reader.read(frame)).isTrue();
            assertThat(frame.bgr().size()).isEqualTo(new Size(width, height));
            int inward = 5;
            int x = cornerX == 0 ? inward : cornerX - inward;
            int y = cornerY == 0 ? inward : cornerY - inward;
            double[] pixel = frame.bgr().get(y, x);
            assertThat(pixel[2]).as("red where the patch is").isGreaterThan(180);
            assertThat(pixel[0]).as("blue where the patch is").isLessThan(60);
        }
    }

    @Test
    void coloursSurviveOnSmallAndOnHighDefinitionFilm() {
        for (int height : new int[] {96, 720}) {
            Path film = folder.resolve("colour" + height + ".mp4");
            TestFilm.write(film, FilmSettings.of(160, height, 25), 0);
            try (FilmReader reader = FilmReader.open(film);
                    FilmFrame frame = new FilmFrame()) {
                reader.read(frame);
                double[] pixel = frame.bgr().get(10, 20);
                for (int channel = 0; channel < 3; channel++) {
                    assertThat(pixel[channel]).isCloseTo(TestFilm.RED.val[channel], within(6.0));
                }
            }
        }
    }

    @Test
    void wideFilmIsScaledWhileItIsDecoded() {
        Path film = folder.resolve("wide.mp4");
        TestFilm.write(film, FilmSettings.of(320, 192, 25), TestFilm.steady(3, 25));
        try (FilmReader reader = FilmReader.open(film, 100);
                FilmFrame frame = new FilmFrame()) {
            assertThat(reader.info().width()).isEqualTo(100);
            assertThat(reader.info().height()).isEqualTo(60);
            assertThat(reader.info().storedWidth()).isEqualTo(320);
            reader.read(frame);
            assertThat(frame.bgr().size()).isEqualTo(new Size(100, 60));
            assertThat(frame.bgr().get(5, 5)[2]).isGreaterThan(180);
        }
    }

    @Test
    void narrowFilmIsNotEnlarged() {
        Path film = folder.resolve("narrow.mp4");
        TestFilm.write(film, FilmSettings.of(64, 48, 25), 0);
        try (FilmReader reader = FilmReader.open(film, 1000)) {
            assertThat(reader.info().width()).isEqualTo(64);
        }
    }

    @Test
    void theSameBufferIsFilledAgain() {
        Path film = folder.resolve("buffer.mp4");
        TestFilm.write(film, FilmSettings.of(64, 48, 25), TestFilm.steady(5, 25));
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            reader.read(frame);
            long address = frame.bgr().dataAddr();
            while (reader.read(frame)) {
                assertThat(frame.bgr().dataAddr()).isEqualTo(address);
            }
        }
    }

    @Test
    void twoReadingsGiveTheSamePictures() {
        Path film = folder.resolve("twice.mp4");
        TestFilm.write(film, FilmSettings.of(321, 181, 25), TestFilm.steady(12, 25));
        try (FilmReader first = FilmReader.open(film, 250);
                FilmReader second = FilmReader.open(film, 250);
                FilmFrame a = new FilmFrame();
                FilmFrame b = new FilmFrame()) {
            while (first.read(a)) {
                assertThat(second.read(b)).isTrue();
                assertThat(Core.norm(a.bgr(), b.bgr(), Core.NORM_INF)).isZero();
                assertThat(b.timeSeconds()).isEqualTo(a.timeSeconds());
            }
        }
    }

    @Test
    void aFilmCutOffGivesWhatIsThereAndSaysHowMuchIsMissing() throws IOException {
        Path whole = folder.resolve("whole.mp4");
        TestFilm.write(whole, FilmSettings.of(320, 192, 25), TestFilm.steady(100, 25));
        byte[] bytes = Files.readAllBytes(whole);
        Path cut = Files.write(folder.resolve("cut.mp4"), Arrays.copyOf(bytes, bytes.length / 2));
        try (FilmReader reader = FilmReader.open(cut);
                FilmFrame frame = new FilmFrame()) {
            assertThatThrownBy(reader::shortfall).isInstanceOf(IllegalStateException.class);
            int count = 0;
            while (reader.read(frame)) {
                count++;
            }
            assertThat(count).isBetween(10, 90);
            FilmShortfall shortfall = reader.shortfall();
            assertThat(shortfall.missingSeconds()).isCloseTo(4 - count / 25.0, within(0.15));
            assertThat(shortfall.sentence().orElseThrow()).contains("cut off");
        }
    }

    @Test
    void aFilmCutOffInItsIndexIsRefused() throws IOException {
        Path whole = folder.resolve("whole.mp4");
        TestFilm.write(whole, FilmSettings.of(64, 48, 25), TestFilm.steady(10, 25));
        Path cut = Files.write(folder.resolve("head.mp4"), Arrays.copyOf(Files.readAllBytes(whole), 200));
        assertThatThrownBy(() -> FilmReader.open(cut))
                .isInstanceOf(FilmException.class)
                .hasMessageContaining("cut off");
    }

    @Test
    void oddNamesAreOpened() throws IOException {
        Path plain = folder.resolve("plain.mp4");
        TestFilm.write(plain, FilmSettings.of(64, 48, 25), TestFilm.steady(2, 25));
        for (String name : List.of("drill: 3 v 3.mp4", "100% effort #2?.mp4", "-loop.mp4", "it's \"that\" film.MP4")) {
            Path odd = Files.copy(plain, folder.resolve(name));
            assertThat(TestFilm.times(odd)).as(name).hasSize(2);
            Path written = folder.resolve("again " + name);
            TestFilm.write(written, FilmSettings.of(64, 48, 25), TestFilm.steady(2, 25));
            assertThat(TestFilm.times(written)).as(name).hasSize(2);
        }
    }

    @Test
    void aGifKeepsItsDelays() throws IOException {
        Path gif = folder.resolve("drawn.gif");
        GifFiles.write(gif, 75, 51, 0.1, 0.5, 0.2, 0.1);
        assertThat(TestFilm.times(gif)).hasSize(4);
        List<Double> times = TestFilm.times(gif);
        assertThat(times.get(1)).isCloseTo(0.1, within(1e-9));
        assertThat(times.get(2)).isCloseTo(0.6, within(1e-9));
        assertThat(times.get(3)).isCloseTo(0.8, within(1e-9));
        try (FilmReader reader = FilmReader.open(gif)) {
            assertThat(reader.info().width()).isEqualTo(75);
            assertThat(reader.info().height()).isEqualTo(51);
        }
    }

    /** Reference: OpenCV's own Motion JPEG decoder, on a film of odd size that OpenCV wrote. */
    @Test
    void motionJpegAgreesWithOpenCv() {
        OpenCv.load();
        Path avi = folder.resolve("jpeg.avi");
        VideoWriter writer = new VideoWriter(
                avi.toString(),
                Videoio.CAP_OPENCV_MJPEG,
                VideoWriter.fourcc('M', 'J', 'P', 'G'),
                20,
                new Size(101, 75));
        for (int i = 0; i < 8; i++) {
            writer.write(TestFilm.picture(101, 75, i));
        }
        writer.release();
        VideoCapture reference = new VideoCapture(avi.toString(), Videoio.CAP_OPENCV_MJPEG);
        Mat expected = new Mat();
        List<Double> times = new ArrayList<>();
        try (FilmReader reader = FilmReader.open(avi);
                FilmFrame frame = new FilmFrame()) {
            while (reader.read(frame)) {
                assertThat(reference.read(expected)).isTrue();
                assertThat(frame.bgr().size()).isEqualTo(expected.size());
                assertThat(meanDifference(frame.bgr(), expected)).isLessThan(2.5);
                times.add(frame.timeSeconds());
            }
        }
        assertThat(reference.read(expected)).isFalse();
        assertThat(times).hasSize(8);
        assertThat(times.get(7)).isCloseTo(7 / 20.0, within(1e-6));
    }

    @Test
    void theHashIsOfTheBytes() throws IOException {
        Path file = Files.write(folder.resolve("abc"), "abc".getBytes(StandardCharsets.US_ASCII));
        // NIST FIPS 180-4 example, SHA-256 of "abc".
        assertThat(FilmHash.sha256(file)).isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
        assertThatThrownBy(() -> FilmHash.sha256(folder.resolve("none")))
                .isInstanceOf(FilmException.class)
                .hasMessageContaining("no such file");
    }

    private static void assertRefused(Path film, String words) {
        assertThatThrownBy(() -> FilmReader.open(film))
                .isInstanceOf(FilmException.class)
                .hasMessageContaining(words)
                .hasMessageStartingWith(film.toString())
                .message()
                .hasLineCount(1);
    }

    private static double meanDifference(Mat a, Mat b) {
        Mat difference = new Mat();
        Core.absdiff(a, b, difference);
        assertThat(difference.type()).isEqualTo(CvType.CV_8UC3);
        return Arrays.stream(Core.mean(difference).val).limit(3).average().orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"0.5", "1.95", "2.0", "3.61"})
    void afterSkippingTheSamePicturesFollow(double seconds) {
        Path film = skipFilm();
        List<Double> times = new ArrayList<>();
        List<byte[]> pictures = new ArrayList<>();
        try (FilmReader whole = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            while (whole.read(frame)) {
                if (frame.timeSeconds() >= seconds - 1e-9) {
                    times.add(frame.timeSeconds());
                    pictures.add(bytes(frame.bgr()));
                }
            }
        }
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            reader.skipTo(seconds);
            for (int i = 0; i < times.size(); i++) {
                assertThat(reader.read(frame)).isTrue();
                assertThat(frame.timeSeconds()).isEqualTo(times.get(i));
                assertThat(frame.index()).isEqualTo(-1);
                assertThat(bytes(frame.bgr())).isEqualTo(pictures.get(i));
            }
            assertThat(reader.read(frame)).isFalse();
        }
    }

    @Test
    void skippingPastTheEndLeavesNothingAndBackwardsIsRefused() {
        Path film = skipFilm();
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            assertThat(reader.read(frame)).isTrue();
            assertThatThrownBy(() -> reader.skipTo(0)).isInstanceOf(IllegalArgumentException.class);
            reader.skipTo(99);
            assertThat(reader.read(frame)).isFalse();
        }
    }

    private static byte[] bytes(Mat picture) {
        byte[] bytes = new byte[(int) (picture.total() * picture.elemSize())];
        picture.get(0, 0, bytes);
        return bytes;
    }

    /** Four seconds with a key frame every two, each picture another grey. */
    private Path skipFilm() {
        OpenCv.load();
        Path film = folder.resolve("skip.mp4");
        try (FilmWriter writer = FilmWriter.create(film, FilmSettings.of(64, 48, 20))) {
            for (int i = 0; i < 80; i++) {
                Mat grey = new Mat(48, 64, CvType.CV_8UC3, Scalar.all(20 + 2 * i));
                writer.write(grey, i / 20.0);
                grey.release();
            }
        }
        return film;
    }
}
