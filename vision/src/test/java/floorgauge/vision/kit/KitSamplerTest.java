package floorgauge.vision.kit;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.track.ImageBox;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;

/** A person in blue, upper left, and one in white who may stand before part of the shirt. */
class KitSamplerTest {

    private static final ImageBox BOX = new ImageBox(40, 20, 60, 150);

    @BeforeAll
    static void load() {
        OpenCv.load();
    }

    private static Optional<KitColour> sample(List<ImageBox> others) {
        try (KitSampler sampler = new KitSampler()) {
            Mat picture = new Mat(240, 320, CvType.CV_8UC3, new Scalar(120, 40, 20));
            for (ImageBox other : others) {
                // A body fills its box but for the sides.
                int side = (int) (0.1 * other.width());
                Rect body = new Rect((int) other.left() + side, (int) other.top(), (int) other.width() - 2 * side, (int)
                        other.height());
                picture.submat(body).setTo(new Scalar(235, 235, 235));
            }
            Optional<KitColour> kit = sampler.sample(picture, BOX, Optional.empty(), others);
            picture.release();
            return kit;
        }
    }

    @Test
    void theShirtInFullViewIsSampledWhole() {
        assertThat(sample(List.of())).isPresent();
    }

    @Test
    void whatStandsBeforeTheShirtLendsItNoColour() {
        KitColour alone = sample(List.of()).orElseThrow();
        KitColour half = sample(List.of(new ImageBox(70, 40, 70, 150))).orElseThrow();
        assertThat(half.distanceTo(alone)).isLessThan(0.25);
    }

    @Test
    void aShirtOutOfSightHasNoColour() {
        assertThat(sample(List.of(new ImageBox(35, 40, 80, 150)))).isEmpty();
    }

    @Test
    void whoStandsBehindHidesNothing() {
        KitColour alone = sample(List.of()).orElseThrow();
        Optional<KitColour> kit;
        try (KitSampler sampler = new KitSampler()) {
            Mat picture = new Mat(240, 320, CvType.CV_8UC3, new Scalar(120, 40, 20));
            kit = sampler.sample(picture, BOX, Optional.empty(), List.of(new ImageBox(35, 10, 80, 140)));
            picture.release();
        }
        assertThat(kit.orElseThrow().distanceTo(alone)).isZero();
    }
}
