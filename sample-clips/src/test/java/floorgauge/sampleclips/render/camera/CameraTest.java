package floorgauge.sampleclips.render.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.floor.PixelPoint;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.opencv.calib3d.Calib3d;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfDouble;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.MatOfPoint3f;
import org.opencv.core.Point;
import org.opencv.core.Point3;

class CameraTest {

    private static final double[] UPRIGHT = {1, 0, 0, 0, 1, 0, 0, 0, 1};

    @Test
    void turnsAwayWhatIsNoRotation() {
        Lens lens = Lens.ofFieldOfView(640, 360, 60, 0);
        assertThatThrownBy(() -> new Camera(lens, new double[9], new double[3]))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Camera(lens, new double[] {1, 0, 0, 0, 1, 0, 0, 0, -1}, new double[3]))
                .hasMessageContaining("right-handed");
        assertThatThrownBy(() -> Camera.lookingAt(lens, new double[] {0, 0, 5}, new double[] {0, 0, 0}, 0))
                .hasMessageContaining("straight");
    }

    @Test
    void hasNoPictureOfWhatLiesBehind() {
        Camera camera = new Camera(Lens.ofFieldOfView(640, 360, 60, 0), UPRIGHT, new double[3]);
        assertThat(camera.pixelAt(0, 0, -1)).isEmpty();
        assertThat(camera.pixelAt(0, 0, 1)).contains(new PixelPoint(319.5, 179.5));
    }

    /** The reference is OpenCV's own projectPoints with the same K, distortion, R and t. */
    @Test
    void projectsAsOpenCvDoes() {
        OpenCv.load();
        long seed = 20_250_101;
        Random random = new Random(seed);
        Lens lens = new Lens(1280, 720, 900, 905, 630, 350, -0.21, 0.08, 0.0012, -0.0007, -0.01);
        Camera camera = Camera.lookingAt(lens, new double[] {2, -12, 4}, new double[] {8, 0, 0.5}, 0.03);
        Point3[] points = new Point3[200];
        for (int i = 0; i < points.length; i++) {
            points[i] =
                    new Point3(4 + 10 * random.nextDouble(), -5 + 12 * random.nextDouble(), 3 * random.nextDouble());
        }
        MatOfPoint2f expected = openCv(lens, camera, points);
        for (int i = 0; i < points.length; i++) {
            double[] out = new double[3];
            Point3 p = points[i];
            if (!camera.project(p.x, p.y, p.z, out)) {
                continue;
            }
            Point e = expected.toArray()[i];
            assertThat(Math.hypot(out[0] - e.x, out[1] - e.y))
                    .as("seed %d, point %d", seed, i)
                    .isLessThan(2e-3);
        }
    }

    private static MatOfPoint2f openCv(Lens lens, Camera camera, Point3[] points) {
        Mat k = new Mat(3, 3, CvType.CV_64F);
        k.put(0, 0, lens.fx(), 0, lens.cx(), 0, lens.fy(), lens.cy(), 0, 0, 1);
        Mat r = new Mat(3, 3, CvType.CV_64F);
        r.put(0, 0, camera.rotation());
        Mat rotation = new Mat();
        Calib3d.Rodrigues(r, rotation);
        Mat t = new Mat(3, 1, CvType.CV_64F);
        t.put(0, 0, camera.translation());
        MatOfPoint2f out = new MatOfPoint2f();
        MatOfDouble distortion = new MatOfDouble(lens.k1(), lens.k2(), lens.p1(), lens.p2(), lens.k3());
        Calib3d.projectPoints(new MatOfPoint3f(points), rotation, t, k, distortion, out);
        return out;
    }

    @Test
    void raysGoBackThroughTheirPixels() {
        Lens lens = new Lens(1280, 720, 800, 800, 639.5, 359.5, -0.12, 0.02, 0.0005, -0.0003, 0);
        double[] ray = new double[2];
        for (int v = 0; v < 720; v += 37) {
            for (int u = 0; u < 1280; u += 41) {
                lens.ray(u, v, ray);
                assertThat(lens.pixelX(ray[0], ray[1])).isCloseTo(u, within(1e-6));
                assertThat(lens.pixelY(ray[0], ray[1])).isCloseTo(v, within(1e-6));
            }
        }
    }

    @Test
    void floorHomographyAgreesWithTheProjectionWithoutDistortion() {
        Lens lens = Lens.ofFieldOfView(1280, 720, 75, 0);
        Camera camera = Camera.lookingAt(lens, new double[] {1, -12, 4}, new double[] {8, 0, 0}, 0.01);
        double[] h = camera.homographyFloorToPixel();
        PixelPoint p = camera.pixelAt(9, 2, 0).orElseThrow();
        double w = h[6] * 9 + h[7] * 2 + h[8];
        assertThat((h[0] * 9 + h[1] * 2 + h[2]) / w).isCloseTo(p.x(), within(1e-6));
        assertThat((h[3] * 9 + h[4] * 2 + h[5]) / w).isCloseTo(p.y(), within(1e-6));
    }
}
