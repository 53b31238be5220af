package floorgauge.court.lines;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RidgeIndexTest {

    private static final int SIZE = 100;

    /** A point of a level stripe. */
    private static RidgePoint level(double x, double y, double l, double b) {
        return new RidgePoint(x, y, 0, 1, 5, l, 0, b);
    }

    private static PaintPlace place(double x, double y, double weight) {
        return new PaintPlace(x, y, 0, 1, weight);
    }

    @Test
    void noPaintHasNoColour() {
        assertThat(new RidgeIndex(List.of(), SIZE, SIZE).weightOfOneColour(List.of()))
                .isZero();
        assertThat(new RidgeIndex(List.of(), SIZE, SIZE).weightOfOneColour(List.of(place(5, 5, 1))))
                .isZero();
    }

    @Test
    void theColourOfMostPaintCountsByWeightWhateverItsStrength() {
        List<RidgePoint> points = new ArrayList<>();
        List<PaintPlace> places = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            // White paint, fainter and fainter.
            points.add(level(10 + 5 * i, 20, 60.0 / (i + 1), 0));
            places.add(place(10 + 5 * i, 20.4, 0.5));
        }
        for (int i = 0; i < 4; i++) {
            points.add(level(10 + 5 * i, 60, 0, -50));
            places.add(place(10 + 5 * i, 59.6, 0.5));
        }
        assertThat(new RidgeIndex(points, SIZE, SIZE).weightOfOneColour(places)).isCloseTo(3, within(1e-9));
    }

    @Test
    void theNearestStripeOfTheDirectionIsFound() {
        RidgeIndex index =
                new RidgeIndex(List.of(level(50, 48, 30, 0), new RidgePoint(50, 51, 1, 0, 5, 30, 0, 0)), SIZE, SIZE);
        assertThat(index.across(50, 50, 0, 1, 3, 4).orElseThrow()).isCloseTo(-2, within(1e-9));
        assertThat(index.across(50, 50, 0, 1, 3, 1)).isEmpty();
    }
}
