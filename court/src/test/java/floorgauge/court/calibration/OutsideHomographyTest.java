package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.opencv.calib3d.Calib3d;
import org.opencv.core.CvType;
import org.opencv.core.DMatch;
import org.opencv.core.KeyPoint;
import org.opencv.core.Mat;
import org.opencv.core.MatOfDMatch;
import org.opencv.core.MatOfDouble;
import org.opencv.core.MatOfKeyPoint;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.Point;
import org.opencv.core.Size;
import org.opencv.features2d.BFMatcher;
import org.opencv.features2d.SIFT;
import org.opencv.imgcodecs.Imgcodecs;

/** Homographies against OpenCV and against the figures that come with its sample pictures. */
class OutsideHomographyTest {

    @BeforeEach
    void natives() {
        OpenCv.load();
    }

    private static Path samples() {
        String given = System.getProperty("floorgauge.opencvSamples", "");
        assumeTrue(!given.isEmpty(), "skipped: the property floorgauge.opencvSamples names no folder");
        return Path.of(given);
    }

    /** Hartley and Zisserman's normalised transform against OpenCV's least squares on the same noisy points. */
    @Test
    void agreesWithOpenCvOnTheSamePoints() {
        PlanarScene scene = PlanarScene.halfCourt();
        long seed = 31;
        Random random = new Random(seed);
        double[][] floor = new double[40][];
        double[][] film = new double[40][];
        for (int i = 0; i < floor.length; i++) {
            floor[i] = new double[] {14 * random.nextDouble(), -6 + 13 * random.nextDouble()};
            film[i] = scene.film(floor[i][0], floor[i][1], 0);
            film[i][0] += 0.3 * random.nextGaussian();
            film[i][1] += 0.3 * random.nextGaussian();
        }
        Homography own = NormalisedDlt.fit(floor, film).orElseThrow();
        Homography theirs = homography(Calib3d.findHomography(points(floor), points(film), 0));
        System.out.printf(
                "normalised transform: at most %.3f pixels from OpenCV's%n",
                Arrays.stream(floor)
                        .mapToDouble(p -> apart(own, theirs, p))
                        .max()
                        .orElseThrow());
        for (double[] p : floor) {
            assertThat(own.mapX(p[0], p[1])).as("seed %d", seed).isCloseTo(theirs.mapX(p[0], p[1]), within(0.15));
            assertThat(own.mapY(p[0], p[1])).as("seed %d", seed).isCloseTo(theirs.mapY(p[0], p[1]), within(0.15));
        }
    }

    /** The published homography from graf1 to graf3 (OpenCV's sample data, H1to3p.xml). */
    @Test
    void findsTheGrafHomography() {
        Homography published = Homography.of(
                .76285898, -.29922929, 225.67123, .33443473, 1.0143901, -76.999973, 3.4663091e-4, -1.4364524e-5, 1);
        Mat first = Imgcodecs.imread(samples().resolve("graf1.png").toString(), Imgcodecs.IMREAD_GRAYSCALE);
        Mat third = Imgcodecs.imread(samples().resolve("graf3.png").toString(), Imgcodecs.IMREAD_GRAYSCALE);
        assumeTrue(!first.empty() && !third.empty(), "skipped: no graf1.png and graf3.png in the folder");
        List<double[]> from = new ArrayList<>();
        List<double[]> to = new ArrayList<>();
        match(first, third, from, to);
        // OpenCV's own RANSAC tells the outliers; the fit to what is left is ours.
        Mat kept = new Mat();
        Calib3d.findHomography(
                points(from.toArray(double[][]::new)), points(to.toArray(double[][]::new)), Calib3d.RANSAC, 2, kept);
        List<double[]> goodFrom = new ArrayList<>();
        List<double[]> goodTo = new ArrayList<>();
        for (int i = 0; i < from.size(); i++) {
            if (kept.get(i, 0)[0] > 0) {
                goodFrom.add(from.get(i));
                goodTo.add(to.get(i));
            }
        }
        Homography own = NormalisedDlt.fit(goodFrom.toArray(double[][]::new), goodTo.toArray(double[][]::new))
                .orElseThrow();
        for (double[] corner : new double[][] {{200, 150}, {600, 150}, {600, 500}, {200, 500}, {400, 320}}) {
            double off = apart(own, published, corner);
            System.out.printf("graf: %.2f pixels from the published place at %s%n", off, Arrays.toString(corner));
            assertThat(off)
                    .as("at %s, from %d matches", Arrays.toString(corner), goodFrom.size())
                    .isLessThan(2.0);
        }
    }

    private static double apart(Homography a, Homography b, double[] at) {
        return Math.hypot(a.mapX(at[0], at[1]) - b.mapX(at[0], at[1]), a.mapY(at[0], at[1]) - b.mapY(at[0], at[1]));
    }

    private static void match(Mat first, Mat third, List<double[]> from, List<double[]> to) {
        SIFT sift = SIFT.create(3000);
        MatOfKeyPoint firstPoints = new MatOfKeyPoint();
        MatOfKeyPoint thirdPoints = new MatOfKeyPoint();
        Mat firstWords = new Mat();
        Mat thirdWords = new Mat();
        sift.detectAndCompute(first, new Mat(), firstPoints, firstWords);
        sift.detectAndCompute(third, new Mat(), thirdPoints, thirdWords);
        List<MatOfDMatch> pairs = new ArrayList<>();
        BFMatcher.create().knnMatch(firstWords, thirdWords, pairs, 2);
        KeyPoint[] a = firstPoints.toArray();
        KeyPoint[] b = thirdPoints.toArray();
        for (MatOfDMatch pair : pairs) {
            DMatch[] two = pair.toArray();
            // Lowe's ratio test (IJCV 60, 2004, section 7.1).
            if (two.length == 2 && two[0].distance < 0.8 * two[1].distance) {
                from.add(new double[] {a[two[0].queryIdx].pt.x, a[two[0].queryIdx].pt.y});
                to.add(new double[] {b[two[0].trainIdx].pt.x, b[two[0].trainIdx].pt.y});
            }
        }
    }

    /**
     * OpenCV's chessboard set, left01 to left14, 9 x 6 corners, with its published figures (left_intrinsics.yml): focal
     * length 535.9157, principal point (342.2832, 235.5708), mean reprojection error 0.3926 pixels. A homography a view is
     * freer than one camera for all, so it fits at least as well; the focal length comes out of each view alone.
     */
    @Test
    void chessboardViewsGiveThePublishedCamera() {
        Path folder = samples();
        Mat camera = Mat.eye(3, 3, CvType.CV_64F);
        camera.put(0, 0, 535.9157, 0, 342.2832, 0, 535.9157, 235.5708, 0, 0, 1);
        MatOfDouble distortion = new MatOfDouble(-0.26637, -0.03858, 0.00178, -0.00028, 0.23839);
        List<Double> focals = new ArrayList<>();
        List<Double> errors = new ArrayList<>();
        for (int i = 1; i <= 14; i++) {
            Path file = folder.resolve(String.format(java.util.Locale.ROOT, "left%02d.jpg", i));
            if (Files.exists(file)) {
                view(file, camera, distortion, focals, errors);
            }
        }
        assumeTrue(!errors.isEmpty(), "skipped: no left01.jpg to left14.jpg in the folder");
        double mean = errors.stream().mapToDouble(e -> e).average().orElseThrow();
        double median =
                focals.stream().sorted().skip(focals.size() / 2).findFirst().orElseThrow();
        System.out.printf(
                "chessboard: %d views, mean reprojection error %.4f pixels, median focal length %.1f%n",
                errors.size(), mean, median);
        assertThat(errors).hasSize(13);
        assertThat(mean).isLessThan(0.3926);
        assertThat(median).isCloseTo(535.9157, within(0.03 * 535.9157));
    }

    private static void view(Path file, Mat camera, MatOfDouble distortion, List<Double> focals, List<Double> errors) {
        Mat picture = Imgcodecs.imread(file.toString(), Imgcodecs.IMREAD_GRAYSCALE);
        MatOfPoint2f corners = new MatOfPoint2f();
        assertThat(Calib3d.findChessboardCorners(picture, new Size(9, 6), corners))
                .as(file.toString())
                .isTrue();
        org.opencv.imgproc.Imgproc.cornerSubPix(
                picture,
                corners,
                new Size(11, 11),
                new Size(-1, -1),
                new org.opencv.core.TermCriteria(
                        org.opencv.core.TermCriteria.COUNT + org.opencv.core.TermCriteria.EPS, 30, 0.01));
        MatOfPoint2f straight = new MatOfPoint2f();
        Calib3d.undistortPoints(corners, straight, camera, distortion, new Mat(), camera);
        double[][] board = new double[54][];
        double[][] film = new double[54][];
        Point[] found = straight.toArray();
        for (int i = 0; i < 54; i++) {
            // Rows down the board, so that the board's z points to the camera.
            board[i] = new double[] {i % 9, -(i / 9)};
            film[i] = new double[] {found[i].x, found[i].y};
        }
        Homography h = NormalisedDlt.fit(board, film).orElseThrow();
        double error = 0;
        for (int i = 0; i < 54; i++) {
            error += Math.hypot(
                            h.mapX(board[i][0], board[i][1]) - film[i][0],
                            h.mapY(board[i][0], board[i][1]) - film[i][1])
                    / 54;
        }
        errors.add(error);
        Homography facing = h.weight(4, -2.5) < 0 ? h.scaled(-1) : h;
        PinholeCamera.of(new FloorProjection(facing, new Lens(342.2832, 235.5708, 400, 0)))
                .ifPresent(c -> focals.add(c.focalPixels()));
    }

    private static MatOfPoint2f points(double[][] points) {
        return new MatOfPoint2f(
                Arrays.stream(points).map(p -> new Point(p[0], p[1])).toArray(Point[]::new));
    }

    private static Homography homography(Mat h) {
        double[] entries = new double[9];
        h.get(0, 0, entries);
        return Homography.of(entries);
    }
}
