package floorgauge.sampleclips.render.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CameraFileTest {

    private static final String GOOD = """
            width: 1280
            height: 720
            K: [900, 0, 640, 0, 900, 360, 0, 0, 1]
            distortion: [-0.1, 0, 0, 0, 0]
            R: [1, 0, 0, 0, 0, -1, 0, 1, 0]
            t: [0, 2, 10]
            """;

    @TempDir
    private Path folder;

    @Test
    void readsACamera() throws IOException {
        Camera camera = CameraFile.read(write(GOOD));
        assertThat(camera.lens().k1()).isEqualTo(-0.1);
        assertThat(camera.position()).containsExactly(0, -10, 2);
    }

    @Test
    void saysThatThereIsNoFile() {
        assertThatThrownBy(() -> CameraFile.read(folder.resolve("none.yaml")))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("no such camera file");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "width: 1280 | width: wide | width: expected a whole number",
                "900, 0, 640 | 900, 640 | K: expected a list of 9 figures",
                "t: [0, 2, 10] | t: [0, two, 10] | t: figure 2 is not a number",
                "R: [1, 0 | R: [2, 0 | orthonormal",
                "K: [900 | K: [-900 | focal lengths"
            })
    void saysFieldAndWhatWasExpected(String from, String to, String message) throws IOException {
        Path file = write(GOOD.replace(from, to));
        assertThatThrownBy(() -> CameraFile.read(file))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining(file.toString())
                .hasMessageContaining(message);
    }

    private Path write(String text) throws IOException {
        return Files.writeString(folder.resolve("camera.yaml"), text);
    }
}
