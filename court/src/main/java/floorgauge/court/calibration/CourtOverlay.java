package floorgauge.court.calibration;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.PaintedLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.opencv.core.Core;
import org.opencv.core.Mat;
import org.opencv.core.Point;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Draws a found court over a frame: the painted lines as thin ink with a white edge, dashed where the evidence does not
 * carry them; the calibration's own error as ellipses that hold 95 in 100, with figures; marked points with the distance
 * to where the fit puts them. Draws into the frame it is given (8 bits, BGR, the film's size).
 */
public final class CourtOverlay {

    private static final Scalar INK = new Scalar(32, 28, 26);
    private static final Scalar PAPER = new Scalar(255, 255, 255);
    private static final Scalar ACCENT = new Scalar(38, 46, 196);

    /** Lines are drawn in pieces of this length, so that a lens may bend them. */
    private static final double PIECE_METRES = 0.25;

    /** Square root of chi-square's 0.95 quantile with two degrees of freedom. */
    private static final double HOLDS_95 = Math.sqrt(-2 * Math.log(0.05));

    private static final double ERROR_SPACING_METRES = 5;

    private final Mat frame;
    private final CourtCalibration calibration;
    private final double unit;

    private CourtOverlay(Mat frame, CourtCalibration calibration) {
        this.frame = frame;
        this.calibration = calibration;
        this.unit = Math.max(1, frame.rows() / 720.0);
    }

    /** Draws the court and its errors; with status NONE, the reason alone. */
    public static void draw(Mat frame, CourtCalibration calibration) {
        CourtOverlay overlay = new CourtOverlay(frame, calibration);
        if (calibration.status() != CalibrationStatus.NONE) {
            calibration.rules().paintedLines().forEach(line -> overlay.line(line, PAPER, 3));
            calibration.rules().paintedLines().forEach(line -> overlay.line(line, INK, 1));
            overlay.errors();
        }
        overlay.caption();
    }

    /** Draws the court, and each marked point with the way to where the fit puts it. */
    public static void draw(Mat frame, PointsFit fit, List<? extends CourtMark> points) {
        draw(frame, fit.calibration());
        CourtOverlay overlay = new CourtOverlay(frame, fit.calibration());
        points.forEach(point -> overlay.mark(point, fit.suspect()));
    }

    private void line(PaintedLine line, Scalar colour, int pixelsAt720) {
        List<FloorPoint> points = samples(line, PIECE_METRES);
        for (int i = 1; i < points.size(); i++) {
            FloorPoint a = points.get(i - 1);
            FloorPoint b = points.get(i);
            boolean carried = calibration.supports(a) && calibration.supports(b);
            if (carried || i % 3 == 1) {
                piece(a, b, colour, pixelsAt720);
            }
        }
    }

    private void piece(FloorPoint a, FloorPoint b, Scalar colour, int pixelsAt720) {
        Optional<Point> p = shown(a);
        Optional<Point> q = shown(b);
        if (p.isPresent() && q.isPresent()) {
            Imgproc.line(frame, p.get(), q.get(), colour, width(pixelsAt720), Imgproc.LINE_AA);
        }
    }

    private void stroke(Point p, Point q, Scalar colour) {
        Imgproc.line(frame, p, q, PAPER, width(3), Imgproc.LINE_AA);
        Imgproc.line(frame, p, q, colour, width(1), Imgproc.LINE_AA);
    }

    private int width(double pixelsAt720) {
        return (int) Math.max(1, Math.round(pixelsAt720 * unit));
    }

    /** The film point, where it is near enough to the picture to be drawn. */
    private Optional<Point> shown(FloorPoint point) {
        double reach = frame.cols() + frame.rows();
        return calibration
                .projection()
                .flatMap(p -> p.toFilm(point.xMetres(), point.yMetres()))
                .filter(p -> Math.abs(p.x()) < reach && Math.abs(p.y()) < reach)
                .map(p -> new Point(p.x(), p.y()));
    }

    private void errors() {
        double halfLength = calibration.rules().lengthMetres() / 2;
        double halfWidth = calibration.rules().widthMetres() / 2;
        for (double x = -halfLength + 1.5; x < halfLength; x += ERROR_SPACING_METRES) {
            for (double y = -halfWidth + 2.5; y < halfWidth; y += ERROR_SPACING_METRES) {
                FloorPoint at = new FloorPoint(x, y);
                Optional<PixelPoint> film =
                        calibration.projection().orElseThrow().toFilm(x, y);
                if (calibration.supports(at) && film.isPresent() && inFrame(film.get())) {
                    calibration.estimate(film.get(), 0, 0).ifPresent(this::ellipse);
                }
            }
        }
    }

    private boolean inFrame(PixelPoint p) {
        return p.x() >= 0 && p.y() >= 0 && p.x() < frame.cols() && p.y() < frame.rows();
    }

    /** The floor ellipse that holds 95 in 100, drawn through its floor points, and its standard error in figures. */
    private void ellipse(FloorEstimate estimate) {
        FloorCovariance c = estimate.covariance();
        double l11 = Math.sqrt(c.xx());
        double l21 = l11 > 0 ? c.xy() / l11 : 0;
        double l22 = Math.sqrt(Math.max(0, c.yy() - l21 * l21));
        Optional<Point> before = Optional.empty();
        for (int i = 0; i <= 24; i++) {
            double angle = 2 * Math.PI * i / 24;
            double u = HOLDS_95 * Math.cos(angle);
            double v = HOLDS_95 * Math.sin(angle);
            Optional<Point> now = shown(new FloorPoint(
                    estimate.mean().xMetres() + l11 * u, estimate.mean().yMetres() + l21 * u + l22 * v));
            if (before.isPresent() && now.isPresent()) {
                Imgproc.line(frame, before.get(), now.get(), ACCENT, width(1), Imgproc.LINE_AA);
            }
            before = now;
        }
        shown(estimate.mean())
                .ifPresent(p -> text(
                        String.format(Locale.ROOT, "+-%.3f m", c.standardErrorMetres()),
                        new Point(p.x + 4 * unit, p.y - 4 * unit),
                        0.36));
    }

    private void mark(CourtMark point, Optional<String> suspect) {
        Point at = new Point(point.pixel().x(), point.pixel().y());
        double arm = 6 * unit;
        Scalar colour = suspect.filter(point.label()::equals).isPresent() ? ACCENT : INK;
        stroke(new Point(at.x - arm, at.y), new Point(at.x + arm, at.y), colour);
        stroke(new Point(at.x, at.y - arm), new Point(at.x, at.y + arm), colour);
        calibration
                .projection()
                .flatMap(projection -> MarkObservations.floor(projection, point))
                .flatMap(this::shown)
                .ifPresent(fitted -> stroke(at, fitted, ACCENT));
    }

    private void caption() {
        String words = calibration.status().name().toLowerCase(Locale.ROOT) + ": " + calibration.reason();
        double size = 0.5;
        int perLine = (int) Math.max(20, frame.cols() / (9.5 * unit));
        int row = 0;
        for (String part : wrapped(words, perLine)) {
            text(part, new Point(10 * unit, (22 + 20 * row) * unit), size);
            row++;
        }
    }

    private static List<String> wrapped(String words, int perLine) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words.split(" ", -1)) {
            if (line.length() > 0 && line.length() + 1 + word.length() > perLine) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    private void text(String words, Point at, double size) {
        double scale = size * unit;
        int[] baseline = new int[1];
        Size extent = Imgproc.getTextSize(words, Imgproc.FONT_HERSHEY_SIMPLEX, scale, width(1), baseline);
        Imgproc.rectangle(
                frame,
                new Point(at.x - 2, at.y - extent.height - 2),
                new Point(at.x + extent.width + 2, at.y + baseline[0]),
                PAPER,
                Core.FILLED);
        Imgproc.putText(frame, words, at, Imgproc.FONT_HERSHEY_SIMPLEX, scale, INK, width(1), Imgproc.LINE_AA);
    }

    /** Points of a centre line about this far apart, ends included. */
    static List<FloorPoint> samples(PaintedLine line, double spacingMetres) {
        List<FloorPoint> points = new ArrayList<>();
        if (line instanceof PaintedLine.Straight straight) {
            int n = (int) Math.ceil(straight.from().distanceTo(straight.to()) / spacingMetres);
            for (int i = 0; i <= n; i++) {
                double t = (double) i / n;
                points.add(new FloorPoint(
                        straight.from().xMetres()
                                + t * (straight.to().xMetres() - straight.from().xMetres()),
                        straight.from().yMetres()
                                + t * (straight.to().yMetres() - straight.from().yMetres())));
            }
        } else if (line instanceof PaintedLine.Arc arc) {
            int n = (int) Math.ceil(Math.abs(arc.sweepRadians()) * arc.radiusMetres() / spacingMetres);
            for (int i = 0; i <= n; i++) {
                points.add(arc.at((double) i / n));
            }
        }
        return points;
    }
}
