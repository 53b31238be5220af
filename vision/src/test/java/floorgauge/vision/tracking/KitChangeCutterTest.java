package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorPoint;
import java.util.List;
import org.junit.jupiter.api.Test;

class KitChangeCutterTest {

    private final KitChangeCutter cutter = new KitChangeCutter(TestSightings.WHITE, TestSightings.NAVY);

    @Test
    void nothingGivesNothing() {
        assertThat(cutter.cut(List.of())).isEmpty();
    }

    @Test
    void oneKitIsOnePieceThoughAFewSamplesAreOfTheManInFront() {
        Tracklet track = TestSightings.walk(
                0,
                6,
                t -> new FloorPoint(t, 0),
                t -> t > 3 && t < 3.3 ? TestSightings.NAVY : TestSightings.WHITE,
                t -> 1.9);
        assertThat(cutter.cut(List.of(track))).hasSize(1);
    }

    @Test
    void aTrackThatGoesOverToAnOpponentIsCutThere() {
        Tracklet track = TestSightings.walk(
                0, 6, t -> new FloorPoint(t, 0), t -> t < 3.5 ? TestSightings.WHITE : TestSightings.NAVY, t -> 1.9);
        List<Tracklet> pieces = cutter.cut(List.of(track));
        assertThat(pieces).hasSize(2);
        assertThat(pieces.get(1).startSeconds()).isCloseTo(3.5, within(0.1));
    }
}
