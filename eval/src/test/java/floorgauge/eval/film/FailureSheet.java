package floorgauge.eval.film;

import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.ImageBox;
import floorgauge.eval.tracking.Sighting;
import floorgauge.eval.tracking.TrackFrame;
import floorgauge.eval.tracking.TrackSequence;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;

/**
 * Where a tracker failed on a labelled film, to be looked at in the build folder: for each stretch in which a labelled player
 * has no box, or a box no player, the middle frame about the box. The longest stretches come first. White: labels, red: what
 * was missed, yellow: a false alarm; other boxes of the tracker in green.
 */
final class FailureSheet {

    private static final double LEAST_OVERLAP = 0.5;
    private static final int TILE_PIXELS = 260;
    private static final int COLUMNS = 6;
    private static final int MOST = 36;
    private static final Scalar LABEL = new Scalar(255, 255, 255);
    private static final Scalar FOUND = new Scalar(90, 200, 90);
    private static final Scalar MISSED = new Scalar(60, 60, 255);
    private static final Scalar FALSE_ALARM = new Scalar(0, 220, 255);

    private FailureSheet() {}

    /** A stretch of frames in which one id fails. */
    private static final class Stretch {
        private final boolean missed;
        private final int id;
        private final List<Long> frames = new ArrayList<>();
        private final List<ImageBox> boxes = new ArrayList<>();

        private Stretch(boolean missed, int id) {
            this.missed = missed;
            this.id = id;
        }

        private long middle() {
            return frames.get(frames.size() / 2);
        }
    }

    /**
     * Writes the sheet.
     *
     * @param truth labels, of frames numbered as the film's
     * @return how many stretches there are
     */
    static int write(Path film, FilmTracks tracks, TrackSequence<ImageBox> truth, Path into) throws IOException {
        Map<Long, List<ImageBox>> labels = boxes(truth);
        Map<Long, List<ImageBox>> found = boxes(TrackSequence.boxes(tracks));
        List<Stretch> stretches = stretches(truth, TrackSequence.boxes(tracks));
        stretches.sort(Comparator.comparingInt((Stretch s) -> -s.frames.size())
                .thenComparingLong(Stretch::middle)
                .thenComparingInt(s -> s.id));
        Map<Long, List<Integer>> wanted = new HashMap<>();
        int count = Math.min(MOST, stretches.size());
        for (int i = 0; i < count; i++) {
            wanted.computeIfAbsent(stretches.get(i).middle(), k -> new ArrayList<>())
                    .add(i);
        }
        TreeMap<Integer, Mat> tiles = new TreeMap<>();
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            while (reader.read(frame)) {
                for (int i : wanted.getOrDefault(frame.index(), List.of())) {
                    tiles.put(i, tile(frame, stretches.get(i), labels, found));
                }
            }
        }
        if (!tiles.isEmpty()) {
            OverlaySheet.save(List.copyOf(tiles.values()), COLUMNS, into);
        }
        return stretches.size();
    }

    private static Map<Long, List<ImageBox>> boxes(TrackSequence<ImageBox> sequence) {
        Map<Long, List<ImageBox>> boxes = new HashMap<>();
        sequence.frames()
                .forEach(f -> boxes.put(
                        f.frame(), f.sightings().stream().map(Sighting::place).toList()));
        return boxes;
    }

    private static List<Stretch> stretches(TrackSequence<ImageBox> truth, TrackSequence<ImageBox> result) {
        Map<Long, TrackFrame<ImageBox>> resultAt = new HashMap<>();
        result.frames().forEach(f -> resultAt.put(f.frame(), f));
        List<Stretch> all = new ArrayList<>();
        Map<Integer, Stretch> missing = new HashMap<>();
        Map<Integer, Stretch> extra = new HashMap<>();
        for (TrackFrame<ImageBox> frame : truth.frames()) {
            List<Sighting<ImageBox>> seen = resultAt.containsKey(frame.frame())
                    ? resultAt.get(frame.frame()).sightings()
                    : List.of();
            collect(true, frame.frame(), alone(frame.sightings(), seen), missing, all);
            collect(false, frame.frame(), alone(seen, frame.sightings()), extra, all);
        }
        return all;
    }

    /** Those that overlap with none of the others by half. */
    private static List<Sighting<ImageBox>> alone(List<Sighting<ImageBox>> ones, List<Sighting<ImageBox>> others) {
        return ones.stream()
                .filter(s ->
                        others.stream().noneMatch(o -> o.place().intersectionOverUnion(s.place()) >= LEAST_OVERLAP))
                .toList();
    }

    private static void collect(
            boolean missed,
            long frame,
            List<Sighting<ImageBox>> failing,
            Map<Integer, Stretch> open,
            List<Stretch> all) {
        Set<Integer> ids = new HashSet<>();
        for (Sighting<ImageBox> s : failing) {
            ids.add(s.id());
            Stretch stretch = open.computeIfAbsent(s.id(), id -> {
                Stretch fresh = new Stretch(missed, id);
                all.add(fresh);
                return fresh;
            });
            stretch.frames.add(frame);
            stretch.boxes.add(s.place());
        }
        open.keySet().retainAll(ids);
    }

    private static Mat tile(
            FilmFrame frame, Stretch stretch, Map<Long, List<ImageBox>> labels, Map<Long, List<ImageBox>> found) {
        Mat picture = frame.bgr().clone();
        labels.getOrDefault(frame.index(), List.of()).forEach(b -> OverlaySheet.rectangle(picture, b, 1, LABEL, 1));
        found.getOrDefault(frame.index(), List.of()).forEach(b -> OverlaySheet.rectangle(picture, b, 1, FOUND, 1));
        ImageBox box = stretch.boxes.get(stretch.boxes.size() / 2);
        OverlaySheet.rectangle(picture, box, 1, stretch.missed ? MISSED : FALSE_ALARM, 2);
        Mat tile = OverlaySheet.closeUp(picture, box, TILE_PIXELS);
        String words = String.format(
                Locale.ROOT,
                "%.2f s %s %d, %d frames",
                frame.timeSeconds(),
                stretch.missed ? "missed" : "false",
                stretch.id,
                stretch.frames.size());
        OverlaySheet.text(tile, words, 6, 16, stretch.missed ? MISSED : FALSE_ALARM);
        return tile;
    }
}
