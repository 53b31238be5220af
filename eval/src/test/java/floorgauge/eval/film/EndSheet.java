package floorgauge.eval.film;

import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;

/**
 * Where tracks begin and end in the middle of a film and of its picture, to be looked at in the build folder: nobody comes out of
 * nothing, so each is somebody found late, lost, or no one. Green: other boxes of the frame.
 */
final class EndSheet {

    private static final int TILE_PIXELS = 260;
    private static final int COLUMNS = 6;

    /** Who is so near the picture's edge walks in or out, as a share of its width. */
    private static final double EDGE_SHARE = 0.04;

    private static final double EDGE_SECONDS = 0.5;
    private static final Scalar OWN = new Scalar(60, 60, 255);
    private static final Scalar OTHER = new Scalar(90, 200, 90);

    private EndSheet() {}

    /**
     * A track's first or last box.
     *
     * @param track whose
     * @param begins whether it is the first
     * @param frame of the film
     * @param seconds presentation time
     * @param box where
     * @param clear whether no other box touches it
     */
    record End(int track, boolean begins, long frame, double seconds, ImageBox box, boolean clear) {}

    /** All beginnings and ends inside the film and the picture, in order of time. */
    static List<End> ends(FilmTracks tracks, int width, int height) {
        double last = tracks.frameTimesSeconds().get(tracks.frameTimesSeconds().lastKey());
        Map<Long, List<ImageBox>> boxes = boxes(tracks);
        List<End> ends = new ArrayList<>();
        for (PlayerTrack track : tracks.players()) {
            List<PlayerObservation> seen = track.observations().stream()
                    .filter(o -> o.box().isPresent())
                    .toList();
            if (!seen.isEmpty()) {
                add(ends, track.id(), true, seen.get(0), boxes, last, width, height);
                add(ends, track.id(), false, seen.get(seen.size() - 1), boxes, last, width, height);
            }
        }
        ends.sort(Comparator.comparingLong(End::frame).thenComparingInt(End::track));
        return ends;
    }

    private static void add(
            List<End> ends,
            int track,
            boolean begins,
            PlayerObservation o,
            Map<Long, List<ImageBox>> boxes,
            double last,
            int width,
            int height) {
        ImageBox box = o.box().orElseThrow();
        double edge = EDGE_SHARE * width;
        boolean inside =
                box.left() > edge && box.top() > edge && box.right() < width - edge && box.bottom() < height - edge;
        if (inside && o.timeSeconds() > EDGE_SECONDS && o.timeSeconds() < last - EDGE_SECONDS) {
            boolean clear = boxes.get(o.frame()).stream()
                    .allMatch(other -> other.equals(box) || other.intersectionOverUnion(box) == 0);
            ends.add(new End(track, begins, o.frame(), o.timeSeconds(), box, clear));
        }
    }

    private static Map<Long, List<ImageBox>> boxes(FilmTracks tracks) {
        Map<Long, List<ImageBox>> boxes = new HashMap<>();
        tracks.players()
                .forEach(p -> p.observations()
                        .forEach(o -> o.box()
                                .ifPresent(b -> boxes.computeIfAbsent(o.frame(), f -> new ArrayList<>())
                                        .add(b))));
        return boxes;
    }

    /** Writes the sheet. */
    static void write(Path film, FilmTracks tracks, List<End> ends, Path into) throws IOException {
        Map<Long, List<ImageBox>> boxes = boxes(tracks);
        TreeMap<Integer, Mat> tiles = new TreeMap<>();
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            while (reader.read(frame)) {
                for (int i = 0; i < ends.size(); i++) {
                    if (ends.get(i).frame() == frame.index()) {
                        tiles.put(i, tile(frame, ends.get(i), boxes.get(frame.index())));
                    }
                }
            }
        }
        if (!tiles.isEmpty()) {
            OverlaySheet.save(List.copyOf(tiles.values()), COLUMNS, into);
        }
    }

    private static Mat tile(FilmFrame frame, End end, List<ImageBox> boxes) {
        Mat picture = frame.bgr().clone();
        boxes.forEach(b -> OverlaySheet.rectangle(picture, b, 1, OTHER, 1));
        OverlaySheet.rectangle(picture, end.box(), 1, OWN, 1);
        Mat tile = OverlaySheet.closeUp(picture, end.box(), TILE_PIXELS);
        String words = String.format(
                Locale.ROOT,
                "%.1f s %d %s%s",
                end.seconds(),
                end.track(),
                end.begins() ? "begins" : "ends",
                end.clear() ? " in the clear" : "");
        OverlaySheet.text(tile, words, 6, 16, OWN);
        return tile;
    }
}
