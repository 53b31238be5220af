package floorgauge.eval.court.view;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.camera.CameraPath;
import floorgauge.sampleclips.render.camera.Lens;
import floorgauge.sampleclips.render.gym.Gym;
import floorgauge.sampleclips.render.gym.LineLayer;
import floorgauge.sampleclips.render.picture.FrameRenderer;
import floorgauge.sampleclips.render.picture.RenderSettings;
import floorgauge.sampleclips.render.value.Hash;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfInt;
import org.opencv.imgcodecs.Imgcodecs;

/**
 * A still camera's view of a gym with ten players on one half, all drawn by chance from a seed: rule book, paint, other
 * sports' lines, camera place and lens. The camera stands at the side, in a corner or behind an end line, 1.5 to 10 m high,
 * and sees most of one half.
 *
 * @param seed everything was drawn from
 * @param gym where
 * @param camera that films
 * @param place in words: side, corner or end
 * @param scene who moves
 */
public record CourtView(long seed, Gym gym, Camera camera, String place, Scene scene) {

    private static final int WIDTH = 1280;
    private static final int HEIGHT = 720;

    /** A view that sees less than this of the half is no film of a half-court offence. */
    private static final double LEAST_SHARE_IN_SIGHT = 0.6;

    /** Standard deviation across a line of where an end of it is painted (common practice: laid by tape). */
    private static final double LAYING_ERROR_METRES = 0.01;

    private static final double DURATION_SECONDS = 60;
    private static final int SAMPLES = 3;
    private static final int JPEG_QUALITY = 80;
    private static final int TRIES = 200;

    public CourtView {
        Objects.requireNonNull(gym, "gym");
        Objects.requireNonNull(camera, "camera");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(scene, "scene");
    }

    /** The rule book of the court. */
    public RuleSet rules() {
        return gym.rules();
    }

    /** Whether other sports' lines lie on the floor too. */
    public boolean shared() {
        return gym.layers().size() > 1;
    }

    /** Height of the camera over the floor, metres. */
    public double heightMetres() {
        return camera.position()[2];
    }

    /** The view of a seed; rule books take turns. */
    public static CourtView of(long seed) {
        RuleSet rules =
                RuleSet.all().get((int) Math.floorMod(seed, (long) RuleSet.all().size()));
        long own = Hash.of(seed, 77);
        Gym gym = Hash.unit(own, 1, 0) < 0.5
                ? laid(Gym.clean(rules, Hash.of(own, 2)), own)
                : laid(Gym.school(rules, 0.5 * Hash.unit(own, 3, 0), Hash.of(own, 2)), own);
        CourtEnd end = Hash.unit(own, 4, 0) < 0.5 ? CourtEnd.NEGATIVE_X : CourtEnd.POSITIVE_X;
        for (int attempt = 0; attempt < TRIES; attempt++) {
            long draw = Hash.of(own, 5, attempt);
            String place = place(draw);
            Camera camera = camera(gym, end, place, draw);
            if (inSight(camera, rules, end) >= LEAST_SHARE_IN_SIGHT) {
                return new CourtView(seed, gym, camera, place, new Milling(rules, end, DURATION_SECONDS, own));
            }
        }
        throw new IllegalStateException("no camera sees most of a half from where it may stand, seed " + seed);
    }

    /** The same gym with its lines where people with tape and string would have put them. */
    static Gym laid(Gym gym, long seed) {
        List<LineLayer> layers = new ArrayList<>();
        for (LineLayer layer : gym.layers()) {
            List<PaintedLine> lines = new ArrayList<>();
            for (PaintedLine line : layer.lines()) {
                lines.add(laid(line, new Random(Hash.of(seed, 60, lines.size() + 100L * layers.size()))));
            }
            layers.add(new LineLayer(layer.sport(), lines, layer.rgb(), layer.wear()));
        }
        return new Gym(
                gym.rules(),
                layers,
                gym.halfLengthMetres(),
                gym.halfWidthMetres(),
                gym.ceilingMetres(),
                gym.woodRgb(),
                gym.dadoRgb(),
                gym.wallRgb(),
                gym.padRgb(),
                gym.gloss(),
                gym.windows(),
                gym.seed());
    }

    private static PaintedLine laid(PaintedLine line, Random random) {
        if (line instanceof PaintedLine.Straight s) {
            double dx = s.to().xMetres() - s.from().xMetres();
            double dy = s.to().yMetres() - s.from().yMetres();
            double length = Math.hypot(dx, dy);
            return new PaintedLine.Straight(
                    s.name(),
                    moved(s.from(), -dy / length, dx / length, random),
                    moved(s.to(), -dy / length, dx / length, random),
                    s.widthMetres());
        }
        PaintedLine.Arc a = (PaintedLine.Arc) line;
        double part = LAYING_ERROR_METRES * Math.sqrt(0.5);
        return new PaintedLine.Arc(
                a.name(),
                new FloorPoint(
                        a.centre().xMetres() + part * random.nextGaussian(),
                        a.centre().yMetres() + part * random.nextGaussian()),
                a.radiusMetres() + part * random.nextGaussian(),
                a.startRadians(),
                a.sweepRadians(),
                a.widthMetres());
    }

    private static FloorPoint moved(FloorPoint end, double acrossX, double acrossY, Random random) {
        double by = LAYING_ERROR_METRES * random.nextGaussian();
        return new FloorPoint(end.xMetres() + by * acrossX, end.yMetres() + by * acrossY);
    }

    private static String place(long draw) {
        double u = Hash.unit(draw, 1, 0);
        return u < 0.55 ? "side" : u < 0.8 ? "corner" : "end";
    }

    private static Camera camera(Gym gym, CourtEnd end, String place, long draw) {
        int e = end.sign();
        double a = Hash.unit(draw, 2, 0);
        double b = Hash.unit(draw, 3, 0);
        double height = Math.min(1.5 + 8.5 * Hash.unit(draw, 4, 0), gym.ceilingMetres() - 0.5);
        int side = Hash.unit(draw, 5, 0) < 0.5 ? -1 : 1;
        double wallX = gym.halfLengthMetres() - 0.3;
        double wallY = gym.halfWidthMetres() - 0.3;
        double[] from = switch (place) {
            case "side" -> new double[] {e * (-2 + 12 * a), side * (wallY - 1.5 * b), height};
            case "corner" -> new double[] {e * (wallX - 2 * a), side * (wallY - 2 * b), height};
            default -> new double[] {e * (wallX - a), side * 5 * b, height};
        };
        double middle = gym.rules().lengthMetres() * (place.equals("end") ? 0.15 : 0.25 + 0.06 * Hash.unit(draw, 6, 0));
        double[] to = {e * middle, -side * 1.5 * Hash.unit(draw, 7, 0), 0.3};
        double view = 62 + 26 * Hash.unit(draw, 8, 0);
        double barrel = -0.12 * Hash.unit(draw, 9, 0);
        double roll = Math.toRadians(1.5) * (2 * Hash.unit(draw, 10, 0) - 1);
        return Camera.lookingAt(Lens.ofFieldOfView(WIDTH, HEIGHT, view, barrel), from, to, roll);
    }

    private static double inSight(Camera camera, RuleSet rules, CourtEnd end) {
        int seen = 0;
        int all = 0;
        for (int i = 0; i <= 14; i++) {
            for (int k = -7; k <= 7; k++) {
                double x = end.sign() * rules.lengthMetres() / 2 * i / 14;
                double y = rules.widthMetres() / 2 * k / 7;
                all++;
                seen += camera.pixelAt(x, y, 0).filter(CourtView::inPicture).isPresent() ? 1 : 0;
            }
        }
        return (double) seen / all;
    }

    private static boolean inPicture(PixelPoint p) {
        return p.x() >= 0 && p.y() >= 0 && p.x() <= WIDTH - 1 && p.y() <= HEIGHT - 1;
    }

    /**
     * Frames spread over a minute, as a codec leaves them.
     *
     * @return 8-bit BGR; the caller releases them
     */
    public List<Mat> frames(int count) {
        OpenCv.load();
        List<Mat> frames = new ArrayList<>();
        RenderSettings settings = RenderSettings.standard(Hash.of(seed, 78)).withSamples(SAMPLES);
        try (FrameRenderer renderer = new FrameRenderer(scene, gym, CameraPath.fixed(camera), settings)) {
            for (int i = 0; i < count; i++) {
                Mat raw = new Mat(HEIGHT, WIDTH, CvType.CV_8UC3);
                raw.put(0, 0, renderer.render(i, time(i, count)));
                frames.add(coded(raw));
                raw.release();
            }
        }
        return frames;
    }

    private static double time(int i, int count) {
        return DURATION_SECONDS * i / count;
    }

    private static Mat coded(Mat raw) {
        MatOfByte bytes = new MatOfByte();
        MatOfInt quality = new MatOfInt(Imgcodecs.IMWRITE_JPEG_QUALITY, JPEG_QUALITY);
        try {
            Imgcodecs.imencode(".jpg", raw, bytes, quality);
            return Imgcodecs.imdecode(bytes, Imgcodecs.IMREAD_COLOR);
        } finally {
            bytes.release();
            quality.release();
        }
    }

    /** A player's foot: where it stands, and where that appears in the picture. */
    public record Foot(FloorPoint floor, PixelPoint pixel) {}

    /** The feet of all players who stand on the court in sight, over the frames. */
    public List<Foot> feet(int count) {
        List<Foot> feet = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            for (PersonState person : scene.at(time(i, count)).people()) {
                FloorPoint at = person.position();
                Optional<PixelPoint> pixel =
                        camera.pixelAt(at.xMetres(), at.yMetres(), 0).filter(CourtView::inPicture);
                pixel.ifPresent(p -> feet.add(new Foot(at, p)));
            }
        }
        return feet;
    }
}
