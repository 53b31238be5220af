package floorgauge.eval.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.floor.FloorPoint;
import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class TrackingScoresDegenerateTest {

    private static final Offset<Double> EXACT = Offset.offset(1e-12);
    private static final TrackSequence<FloorPoint> NO_FRAMES = new TrackSequence<>(List.of());

    @Test
    void nothingAtAll() {
        TrackingScores scores = scores(NO_FRAMES, NO_FRAMES);
        assertThat(scores.clear()).isEqualTo(ClearScores.NONE);
        assertThat(scores.identity()).isEqualTo(IdentityScores.NONE);
        assertThat(scores.clear().mota()).isNaN();
        assertThat(scores.clear().motp()).isNaN();
        assertThat(scores.identity().idf1()).isNaN();
        assertThat(scores.hota().hota()).isNaN();
    }

    @Test
    void emptyTruth() {
        TrackingScores scores = scores(still(3, new int[0]), still(3, 1, 2));
        assertThat(scores.clear().falseAlarms()).isEqualTo(6);
        assertThat(scores.clear().truths()).isZero();
        assertThat(scores.clear().mota()).isNaN();
        assertThat(scores.clear().recall()).isNaN();
        assertThat(scores.clear().precision()).isZero();
        assertThat(scores.identity().idf1()).isZero();
        assertThat(scores.identity().idRecall()).isNaN();
        assertThat(scores.hota().hota()).isZero();
    }

    @Test
    void emptyResult() {
        TrackingScores scores = scores(still(3, 1, 2), NO_FRAMES);
        assertThat(scores.clear().misses()).isEqualTo(6);
        assertThat(scores.clear().mostlyLost()).isEqualTo(2);
        assertThat(scores.clear().mota()).isZero();
        assertThat(scores.clear().precision()).isNaN();
        assertThat(scores.identity().idPrecision()).isNaN();
        assertThat(scores.identity().idRecall()).isZero();
        assertThat(scores.hota().hota()).isZero();
        assertThat(scores.hota().localisationAccuracy()).isEqualTo(1);
    }

    @Test
    void oneFrame() {
        TrackingScores scores = scores(still(1, 1), still(1, 9));
        assertThat(scores.clear().mota()).isEqualTo(1);
        assertThat(scores.clear().motp()).isEqualTo(1);
        assertThat(scores.hota().hota()).isCloseTo(1, EXACT);
        assertThat(scores.identity().idf1()).isEqualTo(1);
        assertThat(scores.clear().frames()).isEqualTo(1);
    }

    @Test
    void allFalse() {
        TrackSequence<FloorPoint> truth = still(4, 1);
        TrackSequence<FloorPoint> far = at(4, 1, 50);
        TrackingScores scores = scores(truth, far);
        assertThat(scores.clear().mota()).isEqualTo(-1);
        assertThat(scores.clear().misses()).isEqualTo(4);
        assertThat(scores.clear().falseAlarms()).isEqualTo(4);
        assertThat(scores.hota().hota()).isZero();
        assertThat(scores.identity().idf1()).isZero();
    }

    /** Identity 5 of the result first stands on truth 1, goes, and comes again on truth 2: one identity, wrongly reused. */
    @Test
    void idsReused() {
        TrackSequence<FloorPoint> truth = new TrackSequence<>(List.of(
                frame(0, sighting(1, 0), sighting(2, 10)),
                frame(1, sighting(1, 0), sighting(2, 10)),
                frame(2, sighting(1, 0), sighting(2, 10)),
                frame(3, sighting(1, 0), sighting(2, 10))));
        TrackSequence<FloorPoint> result = new TrackSequence<>(
                List.of(frame(0, sighting(5, 0)), frame(1, sighting(5, 0)), frame(2), frame(3, sighting(5, 10))));
        TrackingScores scores = scores(truth, result);
        assertThat(scores.clear().pairs()).isEqualTo(3);
        assertThat(scores.clear().switches()).isZero();
        assertThat(scores.clear().misses()).isEqualTo(5);
        // The partner of 5 is truth 1 (two frames together); the third sighting of 5 is false, six truths are left.
        assertThat(scores.identity()).isEqualTo(new IdentityScores(2, 6, 1));
        // Pairs (1, 5) twice and (2, 5) once; truths have 4 frames each, 5 has 3: AssA = (2*2/5 + 1/6)/3, DetA = 3/8.
        double association = (2 * 2.0 / 5 + 1.0 / 6) / 3;
        assertThat(scores.hota().associationAccuracy()).isCloseTo(association, EXACT);
        assertThat(scores.hota().hota()).isCloseTo(Math.sqrt(3.0 / 8 * association), EXACT);
        // Recall over the truths' four frames each, precision over the three frames of 5.
        assertThat(scores.hota().mean(HotaPoint::associationRecall)).isCloseTo((2 * 2.0 / 4 + 1.0 / 4) / 3, EXACT);
        assertThat(scores.hota().mean(HotaPoint::associationPrecision)).isCloseTo((2 * 2.0 / 3 + 1.0 / 3) / 3, EXACT);
        assertThat(scores.hota().mean(HotaPoint::detectionRecall)).isCloseTo(3.0 / 8, EXACT);
        assertThat(scores.hota().mean(HotaPoint::detectionPrecision)).isCloseTo(1, EXACT);
    }

    @Test
    void resultsInFramesWithoutLabelsAreNotScored() {
        TrackSequence<FloorPoint> truth = new TrackSequence<>(List.of(frame(0, sighting(1, 0)), frame(10)));
        TrackSequence<FloorPoint> result = new TrackSequence<>(
                List.of(frame(0, sighting(1, 0)), frame(5, sighting(2, 3)), frame(10, sighting(1, 0))));
        ClearScores clear = scores(truth, result).clear();
        assertThat(clear.frames()).isEqualTo(2);
        assertThat(clear.pairs()).isEqualTo(1);
        assertThat(clear.falseAlarms()).isEqualTo(1);
    }

    @Test
    void beingAwayIsNoFragmentButBeingMissedIs() {
        TrackSequence<FloorPoint> truth = new TrackSequence<>(List.of(
                frame(0, sighting(1, 0)),
                frame(1),
                frame(2, sighting(1, 0)),
                frame(3, sighting(1, 0)),
                frame(4, sighting(1, 0))));
        TrackSequence<FloorPoint> result = new TrackSequence<>(
                List.of(frame(0, sighting(1, 0)), frame(2, sighting(1, 0)), frame(4, sighting(1, 0))));
        assertThat(scores(truth, result).clear().fragments()).isEqualTo(1);
    }

    @Test
    void sharesOnTheBorderArePartlyTracked() {
        // Found in 4 of 5 frames (0.8) and 1 of 5 (0.2): neither is above 0.8 or below 0.2.
        List<TrackFrame<FloorPoint>> truth = new ArrayList<>();
        List<TrackFrame<FloorPoint>> result = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            truth.add(frame(i, sighting(1, 0), sighting(2, 10)));
            result.add(
                    i == 0 ? frame(i, sighting(1, 0), sighting(2, 10)) : i < 4 ? frame(i, sighting(1, 0)) : frame(i));
        }
        ClearScores clear =
                scores(new TrackSequence<>(truth), new TrackSequence<>(result)).clear();
        assertThat(clear.partlyTracked()).isEqualTo(2);
        assertThat(clear.mostlyTracked()).isZero();
        assertThat(clear.mostlyLost()).isZero();
    }

    /** A kept pair stays although the other pairing would lie closer together. */
    @Test
    void aPairIsKeptWhileItReachesTheThreshold() {
        double[][][] similarity = {{{1, 0}, {0, 1}}, {{0.6, 0.9}, {0.9, 0.6}}, {{0.4, 0.9}, {0.9, 0.4}}};
        int[][] present = {{1, 1}, {1, 1}, {1, 1}};
        ClearScores clear =
                ClearScores.of(ClearMatching.usual().match(MatrixScenes.table(similarity, present, present)));
        assertThat(clear.switches()).isEqualTo(2);
        assertThat(clear.similaritySum()).isCloseTo(1 + 1 + 0.6 + 0.6 + 0.9 + 0.9, EXACT);
    }

    @Test
    void exactlyAtTheThresholdIsAPair() {
        double[][][] similarity = {{{0.5}}};
        int[][] present = {{1}};
        SimilarityTable table = MatrixScenes.table(similarity, present, present);
        TrackingScores scores = TrackingScores.of(table, 0.5);
        assertThat(scores.clear().pairs()).isEqualTo(1);
        assertThat(scores.identity().truePositives()).isEqualTo(1);
        assertThat(scores.hota().curve().get(9).truePositives()).isEqualTo(1);
        assertThat(scores.hota().curve().get(10).truePositives()).isZero();
        assertThat(TrackingScores.of(table, 0.51).clear().pairs()).isZero();
        assertThat(TrackingScores.of(table, 0.51).identity().truePositives()).isZero();
    }

    @Test
    void scoresOfClipsAddUp() {
        TrackingScores one = scores(still(3, 1, 2), still(3, 7));
        TrackingScores two = scores(still(5, 1), at(5, 1, 0.5));
        TrackingScores both = one.plus(two);
        assertThat(both.clear().frames()).isEqualTo(8);
        assertThat(both.clear().pairs()).isEqualTo(3 + 5);
        assertThat(both.clear().misses()).isEqualTo(3);
        assertThat(both.clear().motp()).isCloseTo((3 * 1 + 5 * 0.75) / 8, EXACT);
        assertThat(both.clear().mostlyTracked()).isEqualTo(2);
        assertThat(both.clear().mostlyLost()).isEqualTo(1);
        assertThat(both.identity()).isEqualTo(new IdentityScores(8, 3, 0));
        assertThat(both.hota().curve().get(0).truePositives()).isEqualTo(8);
        assertThat(both.hota().curve().get(0).similaritySum()).isCloseTo(6.75, EXACT);
        assertThat(both.hota().curve().get(18).truePositives()).isEqualTo(3);
        assertThat(TrackingScores.none().plus(one)).isEqualTo(one);
    }

    /** Counts that differ from nothing on both sides add up, as the unit cases of one clip do not show. */
    @Test
    void everyCountOfTwoClipsAddsUp() {
        ClearScores twice = scores(still(4, 1, 2), still(4, 7, 8, 9)).clear();
        ClearScores sum = twice.plus(twice);
        assertThat(sum.frames()).isEqualTo(2 * twice.frames());
        assertThat(sum.truths()).isEqualTo(16);
        assertThat(sum.results()).isEqualTo(24);
        assertThat(sum.falseAlarms()).isEqualTo(2 * twice.falseAlarms()).isPositive();
        assertThat(sum.mostlyTracked()).isEqualTo(2 * twice.mostlyTracked()).isPositive();
        HotaPoint point =
                scores(still(4, 1, 2), still(4, 7, 8, 9)).hota().curve().get(0);
        assertThat(point.plus(point).detectionPrecision()).isCloseTo(point.detectionPrecision(), EXACT);
        assertThat(point.detectionPrecision()).isCloseTo(2.0 / 3, EXACT);
    }

    @Test
    void refusesWhatIsNotASimilarityOrAThreshold() {
        assertThatThrownBy(() -> TrackingScores.of(still(1, 1), still(1, 1), (a, b) -> 1.5))
                .hasMessageContaining("0 to 1: 1.5 in frame 0");
        assertThatThrownBy(() -> TrackingScores.of(still(1, 1), still(1, 1), (a, b) -> Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ClearMatching(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new IdentityMatching(1.01)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new FloorSimilarity(0)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void refusesFramesOutOfOrderAndIdsTwice() {
        assertThatThrownBy(() -> new TrackSequence<>(List.of(frame(1), frame(1))))
                .hasMessageContaining("frame 1 follows frame 1");
        assertThatThrownBy(() -> frame(3, sighting(1, 0), sighting(1, 1))).hasMessageContaining("id 1 stands twice");
        assertThatThrownBy(() -> frame(-1)).hasMessageContaining("count from 0");
        assertThatThrownBy(() -> new TrackFrame<FloorPoint>(0, Double.NaN, List.of()))
                .hasMessageContaining("finite");
    }

    private static TrackingScores scores(TrackSequence<FloorPoint> truth, TrackSequence<FloorPoint> result) {
        return TrackingScores.of(truth, result, FloorSimilarity.DEFAULT);
    }

    /** People standing 10 m apart, id 1 nearest the centre; ids of the result stand where their order puts them. */
    private static TrackSequence<FloorPoint> still(int frames, int... ids) {
        List<TrackFrame<FloorPoint>> list = new ArrayList<>();
        for (int f = 0; f < frames; f++) {
            List<Sighting<FloorPoint>> sightings = new ArrayList<>();
            for (int i = 0; i < ids.length; i++) {
                sightings.add(sighting(ids[i], 10.0 * i));
            }
            list.add(new TrackFrame<>(f, f / 25.0, sightings));
        }
        return new TrackSequence<>(list);
    }

    private static TrackSequence<FloorPoint> at(int frames, int id, double x) {
        List<TrackFrame<FloorPoint>> list = new ArrayList<>();
        for (int f = 0; f < frames; f++) {
            list.add(frame(f, sighting(id, x)));
        }
        return new TrackSequence<>(list);
    }

    @SafeVarargs
    private static TrackFrame<FloorPoint> frame(long frame, Sighting<FloorPoint>... sightings) {
        return new TrackFrame<>(frame, frame / 25.0, List.of(sightings));
    }

    private static Sighting<FloorPoint> sighting(int id, double x) {
        return new Sighting<>(id, new FloorPoint(x, 0));
    }
}
