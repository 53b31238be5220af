package floorgauge.app.result;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.track.ImageBox;
import floorgauge.vision.tracking.DetectionFate;
import floorgauge.vision.tracking.Fate;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DetectionsTextTest {

    @TempDir
    Path folder;

    private String written(List<DetectionFate> fates) throws IOException {
        Path file = folder.resolve(DetectionsText.FILE);
        DetectionsText.write(fates, file);
        try (GZIPInputStream in = new GZIPInputStream(Files.newInputStream(file))) {
            return new String(in.readAllBytes(), StandardCharsets.US_ASCII);
        }
    }

    @Test
    void noBoxesAreAHeadingAlone() throws IOException {
        assertThat(written(List.of())).isEqualTo("frame,seconds,left,top,width,height,score,fate,player\n");
    }

    @Test
    void everyBoxIsALine() throws IOException {
        ImageBox box = new ImageBox(10.04, 20, 30.26, 80);
        assertThat(written(List.of(
                        new DetectionFate(7, 0.28, box, 0.914, Fate.FOLLOWED, 3),
                        new DetectionFate(7, 0.28, box, 0.301, Fate.OFF_THE_FLOOR, 0))))
                .endsWith(
                        "7,0.280,10.0,20.0,30.3,80.0,0.91,followed,3\n7,0.280,10.0,20.0,30.3,80.0,0.30,off the floor,\n");
    }

    @Test
    void theSameBoxesGiveTheSameBytes() throws IOException {
        List<DetectionFate> fates = List.of(new DetectionFate(0, 0, new ImageBox(1, 2, 3, 4), 0.5, Fate.TOO_BRIEF, 0));
        written(fates);
        byte[] once = Files.readAllBytes(folder.resolve(DetectionsText.FILE));
        written(fates);
        assertThat(Files.readAllBytes(folder.resolve(DetectionsText.FILE))).isEqualTo(once);
    }
}
