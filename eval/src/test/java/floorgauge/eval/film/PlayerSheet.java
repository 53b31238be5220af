package floorgauge.eval.film;

import floorgauge.court.track.ImageBox;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;

/** Players cut out of pictures, side by side and larger, to be looked at: framed white where found, red where missed. */
final class PlayerSheet {

    private static final int TILE_WIDTH = 120;
    private static final int TILE_HEIGHT = 180;
    private static final int COLUMNS = 14;
    private static final double MARGIN = 0.25;

    private final double leastHeight;
    private final double mostHeight;
    private final int most;
    private final List<Mat> tiles = new ArrayList<>();

    PlayerSheet(double leastHeight, double mostHeight, int most) {
        this.leastHeight = leastHeight;
        this.mostHeight = mostHeight;
        this.most = most;
    }

    /** Takes those in the clear that are of a height to be looked at. */
    void add(Mat picture, List<PlayerRecall.Player> players) {
        for (PlayerRecall.Player player : players) {
            double height = player.box().height();
            if (!player.behind() && height >= leastHeight && height < mostHeight && tiles.size() < most) {
                tiles.add(tile(picture, player));
            }
        }
    }

    private static Mat tile(Mat picture, PlayerRecall.Player player) {
        ImageBox box = player.box();
        double height = box.height() * (1 + 2 * MARGIN);
        double width = height * TILE_WIDTH / TILE_HEIGHT;
        int left = (int) Math.max(0, box.left() + box.width() / 2 - width / 2);
        int top = (int) Math.max(0, box.top() - MARGIN * box.height());
        Rect cut = new Rect(left, top, (int) Math.min(picture.cols() - left, Math.round(width)), (int)
                Math.min(picture.rows() - top, Math.round(height)));
        Mat tile = new Mat();
        Imgproc.resize(picture.submat(cut), tile, new Size(TILE_WIDTH, TILE_HEIGHT), 0, 0, Imgproc.INTER_CUBIC);
        Scalar frame = player.found() ? new Scalar(255, 255, 255) : new Scalar(0, 0, 255);
        Imgproc.rectangle(tile, new Rect(0, 0, TILE_WIDTH, TILE_HEIGHT), frame, 3);
        return tile;
    }

    void write(Path file) throws IOException {
        Files.createDirectories(file.getParent());
        List<Mat> rows = new ArrayList<>();
        for (int i = 0; i < tiles.size(); i += COLUMNS) {
            List<Mat> row = new ArrayList<>(tiles.subList(i, Math.min(tiles.size(), i + COLUMNS)));
            while (row.size() < COLUMNS) {
                row.add(new Mat(TILE_HEIGHT, TILE_WIDTH, CvType.CV_8UC3, Scalar.all(0)));
            }
            Mat line = new Mat();
            Core.hconcat(row, line);
            rows.add(line);
        }
        if (!rows.isEmpty()) {
            Mat sheet = new Mat();
            Core.vconcat(rows, sheet);
            Imgcodecs.imwrite(file.toString(), sheet);
        }
    }
}
