package floorgauge.vision.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PrecisionTrialTest {

    @TempDir
    Path folder;

    @Test
    void whatWasTriedIsRemembered() throws IOException {
        Path memory = folder.resolve("new").resolve("precision");
        Precision first = PrecisionTrial.remembered(memory, GoldenTensors.models());
        assertThat(Files.readString(memory).strip()).isEqualTo(first.name());
    }

    @Test
    void whatIsRememberedStands() throws IOException {
        Path memory = folder.resolve("precision");
        for (Precision precision : Precision.values()) {
            Files.writeString(memory, precision + "\n");
            assertThat(PrecisionTrial.remembered(memory, GoldenTensors.models()))
                    .isEqualTo(precision);
        }
    }

    /** Without their pictures nothing says that the short numbers work. */
    @Test
    void withoutGoldenPicturesNothingIsRounded() throws IOException {
        for (String name : new String[] {"person-detector", "pose-fast", "ball-detector"}) {
            Files.copy(GoldenTensors.models().path().resolve(name + ".pt"), folder.resolve(name + ".pt"));
        }
        assertThat(PrecisionTrial.faster(new ModelFolder(folder))).isEqualTo(Precision.SINGLE);
    }

    /** The sums are the same in kind everywhere, so this holds on processors without such instructions too. */
    @Test
    void shortNumbersGiveAnswersLikeTheLongOnes() {
        assertThat(PrecisionTrial.holds(GoldenTensors.models())).isTrue();
    }
}
