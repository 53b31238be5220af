package floorgauge.eval.score;

import floorgauge.court.track.ImageBox;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.eval.tracking.MotChallengeRow;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What each labelled sighting was like: the player's height in the picture, and how much of the box other labelled boxes that
 * reach lower, and so stand nearer to the camera, cover.
 */
final class TrackingConditions {

    private static final double[] HEIGHTS = {40, 80, 160};
    private static final double COVERED = 0.25;

    private final Map<Long, List<MotChallengeRow>> byFrame = new HashMap<>();

    TrackingConditions(MotChallengeFile truth) {
        for (MotChallengeRow row : truth.rows()) {
            byFrame.computeIfAbsent(row.frame(), f -> new ArrayList<>()).add(row);
        }
    }

    /** Names of the conditions that hold; none where the sighting has no box. */
    List<String> of(long frame, int id) {
        List<MotChallengeRow> rows = byFrame.getOrDefault(frame, List.of());
        return rows.stream()
                .filter(r -> r.id() == id && r.box().isPresent())
                .findFirst()
                .map(r -> List.of(height(r.box().get()), covered(r, rows)))
                .orElse(List.of());
    }

    private static String height(ImageBox box) {
        double from = 0;
        for (double edge : HEIGHTS) {
            if (box.height() < edge) {
                return "height " + Decimals.of(from, 0) + " to " + Decimals.of(edge, 0) + " px";
            }
            from = edge;
        }
        return "height above " + Decimals.of(from, 0) + " px";
    }

    private static String covered(MotChallengeRow row, List<MotChallengeRow> rows) {
        ImageBox box = row.box().orElseThrow();
        double most = 0;
        for (MotChallengeRow other : rows) {
            boolean nearer = other.id() != row.id()
                    && other.box().isPresent()
                    && other.box().get().bottom() > box.bottom();
            if (nearer) {
                most = Math.max(most, box.intersectionArea(other.box().get()) / box.area());
            }
        }
        return most > COVERED ? "covered above a quarter" : "covered below a quarter";
    }
}
