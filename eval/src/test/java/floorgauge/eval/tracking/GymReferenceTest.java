package floorgauge.eval.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.track.ImageBox;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The published tracker boxes and the labels of the TrackID3x3 gym clips (Yamada and others, 2025, arXiv 2503.18282) give
 * the scores that TrackEval computed from the same files.
 */
class GymReferenceTest {

    private static final double FRAMES_PER_SECOND = 20;
    private static final Offset<Double> TOLERANCE = Offset.offset(1e-6);

    @TestFactory
    Stream<DynamicTest> everyClipScoresWhatTheReferenceComputed() throws IOException {
        Path gym = gym();
        List<Map.Entry<String, JsonNode>> clips = new ArrayList<>();
        new ObjectMapper()
                .readTree(gym.resolve("expected-tracking-scores.json").toFile())
                .fields()
                .forEachRemaining(clips::add);
        assertThat(clips).hasSize(21);
        return clips.stream()
                .map(clip -> DynamicTest.dynamicTest(
                        clip.getKey(), () -> assertScores(score(gym, clip.getKey()), clip.getValue())));
    }

    @Test
    void labelsAgainstThemselvesArePerfect() {
        Path file = gym().resolve("boxes/s1t1.txt");
        TrackSequence<ImageBox> truth = MotChallengeFile.read(file).boxes(FRAMES_PER_SECOND, -1);
        TrackingScores scores = TrackingScores.of(truth, truth, new BoxSimilarity());
        assertThat(scores.hota().hota()).isCloseTo(1, TOLERANCE);
        assertThat(scores.clear().mota()).isEqualTo(1);
        assertThat(scores.identity().idf1()).isEqualTo(1);
    }

    private static Path gym() {
        String folder = System.getProperty("floorgauge.gym", "");
        assumeTrue(!folder.isBlank(), "skipped: give the gym clips' folder with -Dfloorgauge.gym=FOLDER");
        return Path.of(folder);
    }

    private static TrackingScores score(Path gym, String clip) {
        MotChallengeFile truth = MotChallengeFile.read(gym.resolve("boxes").resolve(clip));
        MotChallengeFile result =
                MotChallengeFile.read(gym.resolve("other-tracker").resolve(clip), MotChallengeFile.FirstFrame.ZERO);
        return TrackingScores.of(
                truth.boxes(FRAMES_PER_SECOND, result.lastFrame()),
                result.boxes(FRAMES_PER_SECOND, truth.lastFrame()),
                new BoxSimilarity());
    }

    private static void assertScores(TrackingScores scores, JsonNode expected) {
        assertThat(scores.hota().hota()).as("HOTA").isCloseTo(number(expected, "HOTA"), TOLERANCE);
        assertThat(scores.hota().detectionAccuracy()).as("DetA").isCloseTo(number(expected, "DetA"), TOLERANCE);
        assertThat(scores.hota().associationAccuracy()).as("AssA").isCloseTo(number(expected, "AssA"), TOLERANCE);
        assertThat(scores.hota().localisationAccuracy()).as("LocA").isCloseTo(number(expected, "LocA"), TOLERANCE);
        assertThat(scores.clear().mota()).as("MOTA").isCloseTo(number(expected, "MOTA"), TOLERANCE);
        assertThat(scores.clear().motp()).as("MOTP").isCloseTo(number(expected, "MOTP"), TOLERANCE);
        assertThat(scores.identity().idf1()).as("IDF1").isCloseTo(number(expected, "IDF1"), TOLERANCE);
        assertThat(scores.clear().switches()).as("IDSW").isEqualTo((long) number(expected, "IDSW"));
        assertThat(scores.clear().pairs()).as("CLR_TP").isEqualTo((long) number(expected, "CLR_TP"));
        assertThat(scores.clear().falseAlarms()).as("CLR_FP").isEqualTo((long) number(expected, "CLR_FP"));
        assertThat(scores.clear().misses()).as("CLR_FN").isEqualTo((long) number(expected, "CLR_FN"));
    }

    private static double number(JsonNode expected, String name) {
        assertThat(expected.has(name)).as(name).isTrue();
        return expected.get(name).doubleValue();
    }
}
