package floorgauge.vision.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.Mat;

class NumberReaderTest {

    private static NumberReader reader;

    @TempDir
    Path folder;

    @BeforeAll
    static void load() {
        reader = new NumberReader(GoldenTensors.models());
    }

    @AfterAll
    static void free() {
        reader.close();
    }

    /** The golden picture holds the crops one above the other: 23, 7, and a shirt without a number. */
    private static List<Consumer<Mat>> crops() {
        Mat strip = GoldenTensors.picture("number-reader");
        List<Consumer<Mat>> crops = new ArrayList<>();
        for (int k = 0; k < strip.rows() / NumberReader.SIDE; k++) {
            Mat crop = strip.submat(k * NumberReader.SIDE, (k + 1) * NumberReader.SIDE, 0, NumberReader.SIDE);
            crops.add(crop::copyTo);
        }
        return crops;
    }

    @Test
    void aMissingNetworkIsSaidSo() {
        assertThatThrownBy(() -> new NumberReader(new ModelFolder(folder)))
                .isInstanceOf(NetworkException.class)
                .hasMessageContaining("number-reader.pt");
    }

    @Test
    void nobodyIsNoBelief() {
        assertThat(reader.read(List.<Consumer<Mat>>of())).isEmpty();
    }

    @Test
    void answersAreThoseOfTheNetworkWhenItWasExported() throws IOException {
        double[][] golden = GoldenTensors.rows("number-reader");
        List<NumberBelief> beliefs = reader.read(crops());
        for (int k = 0; k < golden.length; k++) {
            for (int n = 0; n < NumberBelief.NUMBERS; n++) {
                assertThat(beliefs.get(k).of(n)).as("crop %d, number %d", k, n).isCloseTo(golden[k][n], within(2e-3));
            }
            assertThat(beliefs.get(k).none()).isCloseTo(golden[k][NumberBelief.NUMBERS], within(2e-3));
        }
    }

    @Test
    void drawnNumbersAreRead() {
        List<NumberBelief> beliefs = reader.read(crops());
        assertThat(beliefs.get(0).of(23)).isGreaterThan(0.9);
        assertThat(beliefs.get(1).of(7)).isGreaterThan(0.9);
        assertThat(beliefs.get(2).none()).isGreaterThan(0.9);
    }

    @Test
    void aCropsAnswerDoesNotDependOnItsNeighbours() {
        List<Consumer<Mat>> many = new ArrayList<>(Collections.nCopies(20, crops().get(2)));
        many.set(17, crops().get(0));
        assertThat(reader.read(many).get(17).of(23))
                .isCloseTo(reader.read(crops()).get(0).of(23), within(1e-5));
    }
}
