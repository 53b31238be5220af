package floorgauge.eval.film;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerSighting;
import floorgauge.court.track.Pose;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.opencv.core.Core;
import org.opencv.core.Mat;
import org.opencv.core.Point;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;

/** Frames of a film with the tracks drawn in, on one picture: to be looked at, in the build folder. */
final class OverlaySheet {

    private static final Scalar[] INKS = {
        new Scalar(60, 60, 255), new Scalar(60, 220, 60), new Scalar(255, 120, 60), new Scalar(0, 220, 255),
        new Scalar(255, 0, 255), new Scalar(255, 255, 0), new Scalar(0, 140, 255), new Scalar(200, 200, 200)
    };

    private static final Joint[][] LIMBS = {
        {Joint.LEFT_SHOULDER, Joint.RIGHT_SHOULDER}, {Joint.LEFT_HIP, Joint.RIGHT_HIP},
        {Joint.LEFT_SHOULDER, Joint.LEFT_HIP}, {Joint.RIGHT_SHOULDER, Joint.RIGHT_HIP},
        {Joint.LEFT_HIP, Joint.LEFT_KNEE}, {Joint.LEFT_KNEE, Joint.LEFT_ANKLE},
        {Joint.RIGHT_HIP, Joint.RIGHT_KNEE}, {Joint.RIGHT_KNEE, Joint.RIGHT_ANKLE}
    };

    private OverlaySheet() {}

    /**
     * Draws every so many-th frame.
     *
     * @param columns frames side by side
     * @param widthPixels of one frame on the sheet
     */
    static void write(
            Path film,
            FilmTracks tracks,
            Map<Long, List<ImageBox>> truth,
            CourtCalibration court,
            long firstFrame,
            long step,
            int count,
            int columns,
            int widthPixels,
            Path into)
            throws IOException {
        Map<Long, FloorFrame> frames = new TreeMap<>();
        tracks.frames().forEach(f -> frames.put(f.frame(), f));
        List<Mat> drawn = new ArrayList<>();
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            while (reader.read(frame) && drawn.size() < count) {
                if (frame.index() >= firstFrame && (frame.index() - firstFrame) % step == 0) {
                    double scale = (double) widthPixels / frame.bgr().cols();
                    Mat small = new Mat();
                    Imgproc.resize(frame.bgr(), small, new Size(), scale, scale, Imgproc.INTER_AREA);
                    truth.getOrDefault(frame.index(), List.of())
                            .forEach(b -> rectangle(small, b, scale, new Scalar(255, 255, 255), 1));
                    FloorFrame f = frames.get(frame.index());
                    if (f != null) {
                        f.players().forEach(p -> draw(small, p, scale, court));
                    }
                    text(small, String.format("%d  %.2f s", frame.index(), frame.timeSeconds()), 6, 16, INKS[7]);
                    drawn.add(small);
                }
            }
        }
        save(drawn, columns, into);
    }

    static void save(List<Mat> drawn, int columns, Path into) throws IOException {
        List<Mat> rows = new ArrayList<>();
        for (int i = 0; i < drawn.size(); i += columns) {
            List<Mat> row = new ArrayList<>(drawn.subList(i, Math.min(drawn.size(), i + columns)));
            while (row.size() < columns) {
                row.add(Mat.zeros(drawn.get(0).size(), drawn.get(0).type()));
            }
            Mat joined = new Mat();
            Core.hconcat(row, joined);
            rows.add(joined);
        }
        Mat sheet = new Mat();
        Core.vconcat(rows, sheet);
        Files.createDirectories(into.getParent());
        Imgcodecs.imwrite(into.toString(), sheet);
    }

    private static void draw(Mat picture, PlayerSighting player, double scale, CourtCalibration court) {
        PlayerObservation o = player.observation();
        Scalar ink = INKS[player.trackId() % INKS.length];
        boolean predicted = o.source() == FootSource.PREDICTED;
        o.box().ifPresent(b -> {
            rectangle(picture, b, scale, ink, predicted ? 1 : 2);
            String name = player.trackId() + player.team().name().substring(0, 1) + (predicted ? "?" : "");
            text(picture, name, b.left() * scale, b.top() * scale - 3, ink);
        });
        o.pose().ifPresent(p -> skeleton(picture, p, scale, ink));
        PixelPoint foot = court.pixelAt(o.foot().mean());
        Imgproc.drawMarker(picture, new Point(foot.x() * scale, foot.y() * scale), ink, Imgproc.MARKER_CROSS, 8, 1);
    }

    private static void skeleton(Mat picture, Pose pose, double scale, Scalar ink) {
        for (Joint[] limb : LIMBS) {
            if (pose.at(limb[0]).score() >= 0.3 && pose.at(limb[1]).score() >= 0.3) {
                PixelPoint a = pose.at(limb[0]).position();
                PixelPoint b = pose.at(limb[1]).position();
                Imgproc.line(
                        picture,
                        new Point(a.x() * scale, a.y() * scale),
                        new Point(b.x() * scale, b.y() * scale),
                        ink,
                        1);
            }
        }
    }

    static void rectangle(Mat picture, ImageBox b, double scale, Scalar ink, int width) {
        Imgproc.rectangle(
                picture,
                new Point(b.left() * scale, b.top() * scale),
                new Point(b.right() * scale, b.bottom() * scale),
                ink,
                width);
    }

    static void text(Mat picture, String text, double x, double y, Scalar ink) {
        Imgproc.putText(picture, text, new Point(x, y), Imgproc.FONT_HERSHEY_SIMPLEX, 0.45, ink, 1, Imgproc.LINE_AA);
    }

    /** A square about a box, twice as large as that, drawn at so many pixels a side. */
    static Mat closeUp(Mat picture, ImageBox box, int pixels) {
        int side = (int) Math.min(Math.min(picture.rows(), picture.cols()), 2.2 * Math.max(box.height(), box.width()));
        int left = (int) Math.max(0, Math.min(picture.cols() - side, box.left() + box.width() / 2 - side / 2.0));
        int top = (int) Math.max(0, Math.min(picture.rows() - side, box.top() + box.height() / 2 - side / 2.0));
        Mat tile = new Mat();
        Imgproc.resize(
                picture.submat(new Rect(left, top, side, side)),
                tile,
                new Size(pixels, pixels),
                0,
                0,
                Imgproc.INTER_CUBIC);
        return tile;
    }
}
