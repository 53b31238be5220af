package floorgauge.court.calibration;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Point;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Draws a {@link PlanarScene} as a camera would film it: planks with grain, paint, glare, a wall, people in other places in
 * every frame, blur and noise. Drawn ray by ray with nine rays a pixel.
 */
final class CourtPicture {

    private static final double METRES_PER_CELL = 0.01;
    private static final double HALF_X = 18;
    private static final double HALF_Y = 11;
    private static final int COLUMNS = (int) (2 * HALF_X / METRES_PER_CELL);
    private static final int ROWS = (int) (2 * HALF_Y / METRES_PER_CELL);

    /** Colours of the paints in BGR, by cell value less 1. */
    private final double[][] paints;

    private final byte[] floor = new byte[COLUMNS * ROWS];
    private final PlanarScene scene;
    private final Random random;
    private final double[] plankTint = new double[4096];
    private final double glareX;
    private final double glareY;
    private final double wear;
    private double offPlace;

    /**
     * @param paint of the court's lines, BGR
     * @param wear share of the paint's pieces of 20 cm that are gone, 0 to 1
     */
    CourtPicture(PlanarScene scene, double[] paint, double wear, long seed) {
        this.scene = scene;
        this.paints = new double[][] {paint, {40, 190, 230}, {60, 60, 200}, {150, 90, 40}};
        this.random = new Random(seed);
        this.wear = wear;
        this.glareX = -12 + 24 * random.nextDouble();
        this.glareY = -7 + 14 * random.nextDouble();
        for (int i = 0; i < plankTint.length; i++) {
            plankTint[i] = 6 * random.nextGaussian();
        }
    }

    /** Paints every line of the court, each as a whole a centimetre or so off its place, as tape leaves it. */
    CourtPicture withCourt() {
        for (PaintedLine line : scene.rules.paintedLines()) {
            offPlace = 0.01 * random.nextGaussian();
            paint(line, 1);
        }
        offPlace = 0;
        return this;
    }

    /** Paints a volleyball court (18 x 9 m, FIVB rule 1.1, secondary) and a badminton court's outline in other colours. */
    CourtPicture withOtherSports() {
        rectangle("volleyball", 0, 0, 18, 9, 2);
        straight("attack-a", -3, -4.5, -3, 4.5, 2);
        straight("attack-b", 3, -4.5, 3, 4.5, 2);
        rectangle("badminton-a", 7, 0, 6.1, 13.4, 3);
        rectangle("badminton-b", -7, 0, 6.1, 13.4, 3);
        rectangle("handball", 0, 0, 31, 17, 4);
        return this;
    }

    private void rectangle(String name, double x, double y, double length, double width, int value) {
        double a = length / 2;
        double b = width / 2;
        straight(name, x - a, y - b, x + a, y - b, value);
        straight(name, x - a, y + b, x + a, y + b, value);
        straight(name, x - a, y - b, x - a, y + b, value);
        straight(name, x + a, y - b, x + a, y + b, value);
    }

    private void straight(String name, double x1, double y1, double x2, double y2, int value) {
        paint(new PaintedLine.Straight(name, new FloorPoint(x1, y1), new FloorPoint(x2, y2), 0.05), value);
    }

    private void paint(PaintedLine line, int value) {
        if (line instanceof PaintedLine.Straight s) {
            double length = s.from().distanceTo(s.to());
            double dx = (s.to().xMetres() - s.from().xMetres()) / length;
            double dy = (s.to().yMetres() - s.from().yMetres()) / length;
            boolean worn = false;
            for (double along = 0; along <= length; along += METRES_PER_CELL / 2) {
                worn = along % 0.2 < METRES_PER_CELL / 2 ? random.nextDouble() < wear : worn;
                for (double across = -line.widthMetres() / 2;
                        across <= line.widthMetres() / 2 && !worn;
                        across += METRES_PER_CELL / 2) {
                    set(
                            s.from().xMetres() + along * dx - (across + offPlace) * dy,
                            s.from().yMetres() + along * dy + (across + offPlace) * dx,
                            value);
                }
            }
        } else if (line instanceof PaintedLine.Arc a) {
            double length = Math.abs(a.sweepRadians()) * a.radiusMetres();
            boolean worn = false;
            for (double along = 0; along <= length; along += METRES_PER_CELL / 2) {
                worn = along % 0.2 < METRES_PER_CELL / 2 ? random.nextDouble() < wear : worn;
                double angle = a.startRadians() + a.sweepRadians() * along / length;
                for (double across = -line.widthMetres() / 2;
                        across <= line.widthMetres() / 2 && !worn;
                        across += METRES_PER_CELL / 2) {
                    set(
                            a.centre().xMetres() + (a.radiusMetres() + across + offPlace) * Math.cos(angle),
                            a.centre().yMetres() + (a.radiusMetres() + across + offPlace) * Math.sin(angle),
                            value);
                }
            }
        }
    }

    private void set(double x, double y, int value) {
        int column = (int) Math.floor((x + HALF_X) / METRES_PER_CELL);
        int row = (int) Math.floor((y + HALF_Y) / METRES_PER_CELL);
        if (column >= 0 && row >= 0 && column < COLUMNS && row < ROWS) {
            floor[row * COLUMNS + column] = (byte) value;
        }
    }

    /** The floor without anyone. */
    Mat emptyFloor() {
        byte[] pixels = new byte[3 * scene.width * scene.height];
        FloorProjection projection = scene.projection();
        Homography back = projection.floorToIdeal().inverse();
        double[] sum = new double[3];
        for (int y = 0; y < scene.height; y++) {
            for (int x = 0; x < scene.width; x++) {
                java.util.Arrays.fill(sum, 0);
                for (int ray = 0; ray < 9; ray++) {
                    addRay(x + (ray % 3 - 1) / 3.0, y + (ray / 3 - 1) / 3.0, projection, back, sum);
                }
                for (int c = 0; c < 3; c++) {
                    pixels[3 * (y * scene.width + x) + c] = level(sum[c] / 9);
                }
            }
        }
        Mat picture = new Mat(scene.height, scene.width, CvType.CV_8UC3);
        picture.put(0, 0, pixels);
        return picture;
    }

    private static byte level(double value) {
        return (byte) Math.max(0, Math.min(255, Math.round(value)));
    }

    private void addRay(double px, double py, FloorProjection projection, Homography back, double[] sum) {
        Lens lens = projection.lens();
        double dx = px - lens.centreX();
        double dy = py - lens.centreY();
        double divisor = 1 + lens.k() * (dx * dx + dy * dy) / (lens.radiusPixels() * lens.radiusPixels());
        double u = lens.centreX() + dx / divisor;
        double v = lens.centreY() + dy / divisor;
        double x = back.mapX(u, v);
        double y = back.mapY(u, v);
        if (!(projection.floorToIdeal().weight(x, y) > 0) || Math.abs(x) >= HALF_X || Math.abs(y) >= HALF_Y) {
            double stripe = 12 * Math.sin(px / 37.0);
            sum[0] += 120 + stripe;
            sum[1] += 140 + stripe;
            sum[2] += 150 + stripe;
            return;
        }
        int column = (int) Math.floor((x + HALF_X) / METRES_PER_CELL);
        int row = (int) Math.floor((y + HALF_Y) / METRES_PER_CELL);
        int value = floor[row * COLUMNS + column];
        // Planks 7 cm wide and 1.4 m long, each row begun elsewhere.
        int plankRow = (int) ((y + HALF_Y) / 0.07);
        int plank = (int) ((x + HALF_X) / 1.4 + (plankRow * 0.37) % 1);
        double tint = plankTint[(plankRow * 31 + plank * 1009) % plankTint.length];
        double glare = 50 * Math.exp(-((x - glareX) * (x - glareX) + (y - glareY) * (y - glareY)) / 6);
        double[] wood = {110, 165, 205};
        for (int c = 0; c < 3; c++) {
            double base = value == 0 ? wood[c] + tint : paints[value - 1][c];
            sum[c] += base + glare;
        }
    }

    /** Frames with people in other places in each, blurred by the lens and noisy. */
    List<Mat> frames(int count, int people) {
        Mat empty = emptyFloor();
        List<Mat> frames = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Mat frame = empty.clone();
            for (int p = 0; p < people; p++) {
                addPerson(frame);
            }
            Imgproc.GaussianBlur(frame, frame, new Size(0, 0), 0.6);
            addNoise(frame, 3);
            frames.add(frame);
        }
        empty.release();
        return frames;
    }

    private void addPerson(Mat frame) {
        double x = scene.rules.lengthMetres() * (random.nextDouble() - 0.5);
        double y = scene.rules.widthMetres() * (random.nextDouble() - 0.5);
        double[] foot = scene.film(x, y, 0);
        double[] head = scene.film(x, y, 1.9);
        Scalar kit = new Scalar(random.nextInt(256), random.nextInt(256), random.nextInt(256));
        if (foot != null && head != null) {
            double length = Math.hypot(foot[0] - head[0], foot[1] - head[1]);
            Imgproc.ellipse(
                    frame,
                    new Point((foot[0] + head[0]) / 2, (foot[1] + head[1]) / 2),
                    new Size(length / 7, length / 2),
                    0,
                    0,
                    360,
                    kit,
                    -1);
        }
    }

    private void addNoise(Mat frame, double sigma) {
        byte[] pixels = new byte[3 * frame.cols() * frame.rows()];
        frame.get(0, 0, pixels);
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = level((pixels[i] & 0xff) + sigma * random.nextGaussian());
        }
        frame.put(0, 0, pixels);
    }

    /**
     * A view drawn by chance: from beyond a side line, a corner or an end line, 1.5 to 10 m up, over a half or the whole
     * court. Empty where the view shows too little of the court for any person to place it.
     */
    static Optional<PlanarScene> randomView(RuleSet rules, int width, int height, Random random) {
        double halfX = rules.lengthMetres() / 2;
        double halfY = rules.widthMetres() / 2;
        double angle = 2 * Math.PI * random.nextDouble();
        double up = 1.5 + 8.5 * random.nextDouble();
        double beyond = 1 + 5 * random.nextDouble();
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        double reach = Math.min(halfX / Math.max(1e-9, Math.abs(c)), halfY / Math.max(1e-9, Math.abs(s)));
        double[] position = {(reach + beyond) * c, (reach + beyond) * s, up};
        double end = random.nextBoolean() ? 1 : -1;
        double[] target = {end * (4 + 5 * random.nextDouble()), -2 + 4 * random.nextDouble()};
        double away = Math.hypot(target[0] - position[0], target[1] - position[1]);
        // From half the court's width to all of it across the picture.
        double across = 12 + 10 * random.nextDouble();
        double focal = width * Math.max(0.45, Math.min(1.6, Math.hypot(away, up) / across));
        PlanarScene view = new PlanarScene(rules, width, height, position, target, focal, 0);
        int seen = 0;
        int all = 0;
        for (double x = 2; x <= halfX; x += 1) {
            for (double y = -halfY; y <= halfY; y += 1) {
                all++;
                seen += view.inPicture(view.film(end * x, y, 0)) ? 1 : 0;
            }
        }
        return seen >= 0.6 * all ? Optional.of(view) : Optional.empty();
    }
}
