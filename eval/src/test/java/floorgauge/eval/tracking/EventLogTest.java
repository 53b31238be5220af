package floorgauge.eval.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class EventLogTest {

    @Test
    void saysWhatBecameOfEveryone() {
        double[][][] similarity = {
            {{0.9, 0, 0.7}, {0.5, 0.8, 0.7}},
            {{0.8, 0, 0}, {0.6, 0, 0}},
            {{0.4, 0, 0.8}, {0.9, 0, 0.4}}
        };
        int[][] truth = {{1, 1}, {1, 1}, {1, 1}};
        int[][] result = {{1, 1, 1}, {1, 0, 0}, {1, 0, 1}};
        EventLog log = new ClearMatching(0.2).match(MatrixScenes.table(similarity, truth, result));
        assertThat(log.size()).isEqualTo(7);
        assertThat(log.frameCount()).isEqualTo(3);
        assertThat(log.truthCount()).isEqualTo(2);
        assertThat(log.resultCount()).isEqualTo(3);
        assertThat(log.events().toList())
                .isEqualTo(List.of(
                        pair(TrackingEventKind.MATCH, 0, 0, 0, 0.9),
                        pair(TrackingEventKind.MATCH, 0, 1, 1, 0.8),
                        new TrackingEvent(
                                TrackingEventKind.FALSE_ALARM, 0, 0, OptionalInt.empty(), OptionalInt.of(2), 0),
                        pair(TrackingEventKind.MATCH, 1, 0, 0, 0.8),
                        new TrackingEvent(TrackingEventKind.MISS, 1, 0.04, OptionalInt.of(1), OptionalInt.empty(), 0),
                        pair(TrackingEventKind.MATCH, 2, 0, 0, 0.4),
                        pair(TrackingEventKind.SWITCH, 2, 1, 2, 0.4)));
    }

    @Test
    void growsBeyondItsFirstSize() {
        int frames = 1000;
        double[][][] similarity = new double[frames][1][1];
        int[][] present = new int[frames][1];
        for (int f = 0; f < frames; f++) {
            similarity[f][0][0] = f % 2;
            present[f][0] = 1;
        }
        EventLog log = ClearMatching.usual().match(MatrixScenes.table(similarity, present, present));
        // Even frames: a miss and a false alarm; odd frames: a match.
        assertThat(log.size()).isEqualTo(1500);
        assertThat(log.event(1499).frame()).isEqualTo(999);
        assertThat(log.event(1499).kind()).isEqualTo(TrackingEventKind.MATCH);
    }

    @Test
    void anEventNamesExactlyThoseWhoWereThere() {
        assertThatThrownBy(
                        () -> new TrackingEvent(TrackingEventKind.MISS, 0, 0, OptionalInt.of(1), OptionalInt.of(1), 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() ->
                        new TrackingEvent(TrackingEventKind.FALSE_ALARM, 0, 0, OptionalInt.of(1), OptionalInt.of(1), 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() ->
                        new TrackingEvent(TrackingEventKind.MATCH, 0, 0, OptionalInt.of(1), OptionalInt.empty(), 1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static TrackingEvent pair(TrackingEventKind kind, int frame, int truth, int result, double similarity) {
        return new TrackingEvent(kind, frame, frame / 25.0, OptionalInt.of(truth), OptionalInt.of(result), similarity);
    }
}
