package floorgauge.eval.tracking;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Scores against figures that others published for small scenes. */
class TrackingScoresReferenceTest {

    private static final Offset<Double> EXACT = Offset.offset(1e-12);

    /** TrackEval, unit cases of its metrics (tests/test_metrics.py): five frames, two truths, two results. */
    @Test
    void noConfusion() {
        double[][][] similarity = new double[5][2][2];
        similarity[0][1][0] = 1;
        similarity[1][1][0] = 1;
        similarity[3][0][1] = 1;
        similarity[4][0][1] = 1;
        TrackingScores scores = TrackingScores.of(twoAgainstTwo(similarity), 0.5);
        assertClear(scores.clear(), 4, 4, 5, 0, -1.0 / 8);
        assertIdentity(scores.identity(), 4, 4, 5, 8.0 / 17);
    }

    /** TrackEval, the same with overlaps between the other pairs. */
    @Test
    void withConfusion() {
        double[][][] similarity = new double[5][2][2];
        similarity[0][1][0] = 1;
        similarity[1][1][0] = 1;
        similarity[3][0][1] = 1;
        similarity[4][0][1] = 1;
        similarity[2][0][0] = 1;
        similarity[1][1][1] = 1;
        TrackingScores scores = TrackingScores.of(twoAgainstTwo(similarity), 0.5);
        assertClear(scores.clear(), 5, 3, 4, 1, 0);
        assertIdentity(scores.identity(), 4, 4, 5, 8.0 / 17);
    }

    /** TrackEval: each of two truths is split among results. */
    @Test
    void splitTracks() {
        double[][][] similarity = new double[5][2][5];
        similarity[0][0][0] = 1;
        similarity[1][0][0] = 1;
        similarity[3][0][3] = 1;
        similarity[4][0][3] = 1;
        similarity[2][1][1] = 1;
        similarity[3][1][1] = 1;
        similarity[4][1][2] = 1;
        similarity[0][1][4] = 1;
        similarity[1][1][4] = 1;
        int[][] truth = {{1, 1}, {1, 1}, {0, 1}, {1, 1}, {1, 1}};
        int[][] result = {{1, 0, 0, 0, 1}, {1, 0, 0, 0, 1}, {0, 1, 0, 1, 0}, {0, 1, 0, 1, 0}, {0, 1, 1, 1, 0}};
        TrackingScores scores = TrackingScores.of(MatrixScenes.table(similarity, truth, result), 0.5);
        assertClear(scores.clear(), 9, 0, 2, 3, 4.0 / 9);
        assertIdentity(scores.identity(), 4, 5, 7, 8.0 / 20);
    }

    /**
     * py-motmetrics, the three-frame example of its README: MOTA 0.5, MOTP 0.34 as a distance, IDF1 0.833333, recall and
     * precision 0.833333, one truth mostly tracked and one partly, one false positive, miss, switch and fragmentation.
     * Distances d become similarities 1 - d; a pair that may not be matched is 0.
     */
    @Test
    void threeFrameExample() {
        double[][][] similarity = {
            {{0.9, 0, 0.7}, {0.5, 0.8, 0.7}},
            {{0.8, 0, 0}, {0.6, 0, 0}},
            {{0.4, 0, 0.8}, {0.9, 0, 0.4}}
        };
        int[][] truth = {{1, 1}, {1, 1}, {1, 1}};
        int[][] result = {{1, 1, 1}, {1, 0, 0}, {1, 0, 1}};
        TrackingScores scores = TrackingScores.of(MatrixScenes.table(similarity, truth, result), 0.2);
        assertThat(scores.clear().mota()).isCloseTo(0.5, EXACT);
        assertThat(1 - scores.clear().motp()).isCloseTo(0.34, EXACT);
        assertThat(scores.clear().recall()).isCloseTo(5.0 / 6, EXACT);
        assertThat(scores.clear().precision()).isCloseTo(5.0 / 6, EXACT);
        assertThat(scores.clear().mostlyTracked()).isEqualTo(1);
        assertThat(scores.clear().partlyTracked()).isEqualTo(1);
        assertThat(scores.clear().mostlyLost()).isZero();
        assertThat(scores.clear().falseAlarms()).isEqualTo(1);
        assertThat(scores.clear().misses()).isEqualTo(1);
        assertThat(scores.clear().switches()).isEqualTo(1);
        assertThat(scores.clear().fragments()).isEqualTo(1);
        assertThat(scores.identity().idf1()).isCloseTo(0.833333, Offset.offset(1e-6));
        assertThat(scores.identity().idPrecision()).isCloseTo(5.0 / 6, EXACT);
        assertThat(scores.identity().idRecall()).isCloseTo(5.0 / 6, EXACT);
    }

    private static SimilarityTable twoAgainstTwo(double[][][] similarity) {
        int[][] truth = {{1, 1}, {1, 1}, {1, 1}, {1, 0}, {1, 0}};
        int[][] result = {{1, 1}, {1, 1}, {1, 1}, {1, 1}, {0, 1}};
        return MatrixScenes.table(similarity, truth, result);
    }

    private static void assertClear(
            ClearScores clear, int pairs, int misses, int falseAlarms, int switches, double mota) {
        assertThat(clear.pairs()).isEqualTo(pairs);
        assertThat(clear.misses()).isEqualTo(misses);
        assertThat(clear.falseAlarms()).isEqualTo(falseAlarms);
        assertThat(clear.switches()).isEqualTo(switches);
        assertThat(clear.mota()).isCloseTo(mota, EXACT);
    }

    private static void assertIdentity(
            IdentityScores identity, int truePositives, int misses, int falseAlarms, double idf1) {
        assertThat(identity.truePositives()).isEqualTo(truePositives);
        assertThat(identity.misses()).isEqualTo(misses);
        assertThat(identity.falseAlarms()).isEqualTo(falseAlarms);
        assertThat(identity.idf1()).isCloseTo(idf1, EXACT);
    }
}
