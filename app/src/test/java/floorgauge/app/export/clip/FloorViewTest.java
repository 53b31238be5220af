package floorgauge.app.export.clip;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import java.util.List;
import org.junit.jupiter.api.Test;

class FloorViewTest {

    @Test
    void withoutAHomographyNothingAppears() {
        assertThat(new FloorView(List.of(), 640, 360).pixelAt(new FloorPoint(1, 1)))
                .isEmpty();
    }

    /** OpenCV's graf1 to graf3 homography, published with its samples; a point goes there and back. */
    @Test
    void aPointComesBackThroughAPublishedHomography() {
        List<Double> graf = List.of(
                .76285898, -.29922929, 225.67123, .33443473, 1.0143901, -76.999973, 3.4663091e-4, -1.4364524e-5, 1.0);
        double x = 310;
        double y = 250;
        double w = graf.get(6) * x + graf.get(7) * y + graf.get(8);
        FloorPoint there = new FloorPoint(
                (graf.get(0) * x + graf.get(1) * y + graf.get(2)) / w,
                (graf.get(3) * x + graf.get(4) * y + graf.get(5)) / w);
        PixelPoint back = new FloorView(graf, 800, 640).pixelAt(there).orElseThrow();
        assertThat(back.distanceTo(new PixelPoint(x, y))).isLessThan(1e-9);
    }

    /** A camera 5 m up that looks along y and down by atan(1/2); the floor behind it must not appear as if before it. */
    @Test
    void whatLiesBehindTheCameraDoesNotAppear() {
        double f = 500;
        double sin = 1 / Math.sqrt(5);
        double cos = 2 / Math.sqrt(5);
        // Ray of pixel (u, v), v down: (u/f, cos - v/f sin, -sin - v/f cos); floor where z falls by 5.
        List<Double> h = List.of(
                5 / f,
                0.0,
                -5 * 320 / f,
                0.0,
                -5 * sin / f,
                5 * (cos + 180 * sin / f),
                0.0,
                cos / f,
                sin - 180 * cos / f);
        FloorView view = new FloorView(h, 640, 360);
        PixelPoint before = view.pixelAt(new FloorPoint(0, 10)).orElseThrow();
        assertThat(before.distanceTo(new PixelPoint(320, 180))).isLessThan(1e-6);
        assertThat(view.pixelAt(new FloorPoint(0, -10))).isEmpty();
    }
}
