package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.lines.BackgroundPicture;
import floorgauge.court.lines.RidgeFinder;
import floorgauge.court.lines.RidgePoint;
import floorgauge.court.rules.GymFile;
import floorgauge.court.rules.RuleSet;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Point;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;

/**
 * A real gym floor with hand-made labels: TrackID3x3 (Yamada and others, 2025, arXiv 2503.18282). The folder is given as
 * the property floorgauge.gym; the pictures stay in the build folder.
 *
 * <p>The data set's places are centimetres from the end line and across; here they become {@code x = 14 - along / 100, y =
 * 7.5 - across / 100}, which keeps the court frame right-handed.
 */
class GymFilmTest {

    private static final int WIDTH = 1280;
    private static final int HEIGHT = 720;

    private Path folder;

    @TempDir
    private Path hallFolder;

    @BeforeEach
    void folderIsGiven() {
        String given = System.getProperty("floorgauge.gym", "");
        assumeTrue(!given.isEmpty(), "skipped: the property floorgauge.gym names no folder");
        folder = Path.of(given);
    }

    private record Labelled(MarkedPoint point, boolean used) {}

    private List<Labelled> labelled() throws IOException {
        JsonNode root = new ObjectMapper().readTree(Files.readString(folder.resolve("court-points.json")));
        List<Labelled> points = new ArrayList<>();
        for (JsonNode node : root.get("points")) {
            FloorPoint floor = new FloorPoint(
                    14 - node.get("court_cm_by_our_reading").get(0).asDouble() / 100,
                    7.5 - node.get("court_cm_by_our_reading").get(1).asDouble() / 100);
            PixelPoint pixel = new PixelPoint(
                    node.get("px").get(0).asDouble(), node.get("px").get(1).asDouble());
            boolean used = node.get("note").asText().startsWith("used");
            points.add(new Labelled(new MarkedPoint("point " + node.get("key").asInt(), floor, pixel), used));
        }
        return points;
    }

    @Test
    void heldOutPointsLieWithinFifteenCentimetres() throws IOException {
        List<Labelled> all = labelled();
        CourtCalibration calibration = CourtCalibrator.fromPoints(
                RuleSet.fiba(),
                all.stream().filter(Labelled::used).map(Labelled::point).toList(),
                WIDTH,
                HEIGHT);
        assertThat(all.stream().filter(p -> !p.used())).hasSize(8);
        for (Labelled held : all) {
            FloorPoint found = calibration.floorAt(held.point().pixel(), 0, 0).mean();
            double error = found.distanceTo(held.point().floor());
            System.out.printf("gym %s%s: %.3f m%n", held.point().label(), held.used() ? " (used)" : "", error);
            assertThat(error).as(held.point().label()).isLessThanOrEqualTo(0.15);
        }
    }

    @Test
    void allPointsTogetherDrawTheCourtOnItsPaint() throws IOException {
        List<MarkedPoint> points = labelled().stream().map(Labelled::point).toList();
        PointsFit fit = CourtCalibrator.fitPoints(RuleSet.fiba(), points, WIDTH, HEIGHT);
        System.out.println("gym, all twelve points: " + fit.calibration().reason());
        assertThat(fit.calibration().status()).isNotEqualTo(CalibrationStatus.NONE);
        Mat picture = frame(40);
        Imgproc.resize(picture, picture, new Size(WIDTH, HEIGHT), 0, 0, Imgproc.INTER_CUBIC);
        CourtOverlay.draw(picture, fit, points);
        Path out = Path.of("target", "gym-court-points.png").toAbsolutePath();
        assertThat(Imgcodecs.imwrite(out.toString(), picture)).isTrue();
    }

    /**
     * This film does not carry a court without a click. Its hall has the lines of one end alone, two maps are drawn over the
     * near part of it, and what is left is dithered: at the given homography 43 in 100 of the lines of a FIBA court that
     * should be in sight carry paint. Neither the search for a whole court nor that for the lines that the hall really has
     * places one, and both say so instead of guessing.
     */
    @Test
    void withoutAClickTheFilmIsRefused() throws IOException {
        List<Mat> frames = frames();
        try {
            requireRefused(RuleSet.fiba(), frames);
            requireRefused(hall(), frames);
        } finally {
            frames.forEach(Mat::release);
        }
    }

    private void requireRefused(RuleSet rules, List<Mat> frames) throws IOException {
        LinesFit found = CourtCalibrator.fitLines(Optional.of(rules), frames);
        System.out.printf(
                "gym, without a click, %s: log likelihood ratio %.1f, %.0f in 100 of the lines; %s%n",
                rules.name(),
                found.score(),
                100 * found.matchedShare(),
                found.calibration().reason());
        assertThat(found.calibration().status()).isEqualTo(CalibrationStatus.NONE);
        assertThat(found.calibration().reason()).isNotBlank();
    }

    /**
     * What the film would carry at best: a search that is told the answer, for it starts from the labelled points. The
     * picture shows the court of the labels and every stripe that was found.
     */
    @Test
    void fromTheLabelledPlaceTheLinesAreTooFewAsWell() throws IOException {
        List<MarkedPoint> points = labelled().stream().map(Labelled::point).toList();
        CourtCalibration known = CourtCalibrator.fromPoints(RuleSet.fiba(), points, WIDTH, HEIGHT);
        List<Mat> frames = frames();
        Mat picture = BackgroundPicture.median(frames, 640);
        try {
            LinesFit near = LinesCalibrator.near(inFilm(known), frames);
            System.out.printf(
                    "gym, lines looked for at the labelled place: log likelihood ratio %.1f, %.0f in 100 of the lines; %s%n",
                    near.score(), 100 * near.matchedShare(), near.lineShares());
            assertThat(near.calibration().status()).isEqualTo(CalibrationStatus.NONE);
            assertThat(near.matchedShare()).isLessThan(0.6);
            List<RidgePoint> stripes = RidgeFinder.find(picture);
            Imgproc.resize(picture, picture, new Size(WIDTH, HEIGHT), 0, 0, Imgproc.INTER_CUBIC);
            CourtOverlay.draw(picture, known);
            for (RidgePoint stripe : stripes) {
                Imgproc.circle(
                        picture, new Point(2 * stripe.x() + 0.5, 2 * stripe.y() + 0.5), 1, new Scalar(255, 0, 255), -1);
            }
            Path out = Path.of("target", "gym-court-stripes.png").toAbsolutePath();
            assertThat(Imgcodecs.imwrite(out.toString(), picture)).isTrue();
        } finally {
            picture.release();
            frames.forEach(Mat::release);
        }
    }

    /** The same court in the film's own 640 x 360 pixels. */
    private static CourtCalibration inFilm(CourtCalibration known) {
        return new CourtCalibration(
                known.rules(),
                known.status(),
                known.reason(),
                640,
                360,
                known.projection().map(p -> p.forPictureScaledBy(0.5)),
                known.covariance(),
                known.coverage());
    }

    /** The lines of this hall. */
    private RuleSet hall() throws IOException {
        Path file = Files.writeString(
                hallFolder.resolve("hall.yaml"),
                "name: hall\nlike: fiba\nunpainted: [negative-end, centre-circle, centre-line,"
                        + " positive-end-no-charge-arc]\n");
        return GymFile.read(file);
    }

    private List<Mat> frames() throws IOException {
        List<Mat> frames = new ArrayList<>();
        for (int index = 0; index < 168; index += 14) {
            frames.add(frame(index));
        }
        return frames;
    }

    /** A frame of the film, as a BGR picture. */
    private Mat frame(int index) throws IOException {
        OpenCv.load();
        try (ImageInputStream in = ImageIO.createImageInputStream(
                folder.resolve("s1t1-drawn-over.gif").toFile())) {
            ImageReader reader = ImageIO.getImageReadersByFormatName("gif").next();
            reader.setInput(in);
            BufferedImage image = new BufferedImage(640, 360, BufferedImage.TYPE_3BYTE_BGR);
            // Frames of this film are patches over the ones before.
            for (int i = 0; i <= index; i++) {
                var place = reader.getImageMetadata(i).getAsTree("javax_imageio_gif_image_1.0");
                var descriptor = (javax.imageio.metadata.IIOMetadataNode) place.getFirstChild();
                image.getGraphics()
                        .drawImage(
                                reader.read(i),
                                Integer.parseInt(descriptor.getAttribute("imageLeftPosition")),
                                Integer.parseInt(descriptor.getAttribute("imageTopPosition")),
                                null);
            }
            byte[] bytes = ((java.awt.image.DataBufferByte) image.getRaster().getDataBuffer()).getData();
            Mat mat = new Mat(360, 640, CvType.CV_8UC3);
            mat.put(0, 0, bytes);
            return mat;
        }
    }
}
