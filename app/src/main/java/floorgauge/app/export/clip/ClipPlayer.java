package floorgauge.app.export.clip;

import floorgauge.app.export.ChosenFinding;
import floorgauge.app.export.Cut;
import floorgauge.app.export.FilmChoice;
import floorgauge.app.result.FilmSource;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Mark;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Plays findings of one film, one after the other, with what was measured drawn in; the decisive moment is held. Pictures are
 * drawn on one canvas that is used again and again. Not safe for use by several threads; close it.
 */
public final class ClipPlayer implements AutoCloseable {

    /** Width above which a film is scaled down: what a screen in a team room shows. */
    private static final int MOST_WIDTH = 1280;

    private static final double UNITS_HIGH = 720;

    private final FilmChoice choice;
    private final Path film;
    private final FilmTracks tracks;
    private final FloorView view;
    private final ClipSize size;
    private final double holdSeconds;
    private final Mat canvas;

    /** Takes the pictures of a clip. */
    @FunctionalInterface
    public interface Screen {

        /**
         * @param bgr 8-bit BGR of the clip's size; not kept
         * @param timeSeconds since the clip's start
         */
        void show(Mat bgr, double timeSeconds);
    }

    /**
     * @param film the film itself
     * @param size of the pictures shown
     * @param holdSeconds for which the decisive moment stands still, at least 0
     */
    public ClipPlayer(FilmChoice choice, Path film, ClipSize size, double holdSeconds) {
        this.choice = choice;
        this.film = film;
        this.tracks = choice.film().tracks();
        FilmSource source = choice.film().findings().film();
        this.view = new FloorView(
                choice.film().findings().court().pixelToFloor(), source.widthPixels(), source.heightPixels());
        this.size = size;
        this.holdSeconds = holdSeconds;
        this.canvas = new Mat(size.height(), size.width(), org.opencv.core.CvType.CV_8UC3, Ink.PAPER);
    }

    /** The size at which a film is shown. */
    public static ClipSize sizeOf(Path film) {
        try (FilmReader reader = FilmReader.open(film, MOST_WIDTH)) {
            return ClipSize.of(reader.info().width(), reader.info().height());
        }
    }

    /**
     * Shows one finding.
     *
     * @return how long it lasts, seconds
     */
    public double play(ChosenFinding chosen, Cut cut, Screen screen) {
        NavigableMap<Double, FloorFrame> frames = frames(cut);
        PaperStrip strip = new PaperStrip(choice.film().findings().film().name(), chosen, cut);
        OptionalDouble held = decisive(chosen.finding());
        double interval = 1 / choice.film().framesPerSecond();
        double added = 0;
        double shown = 0;
        try (FilmReader reader = FilmReader.open(film, MOST_WIDTH);
                FilmFrame picture = new FilmFrame()) {
            double filmScale = reader.info().width()
                    / (double) choice.film().findings().film().widthPixels();
            FindingOverlay overlay = new FindingOverlay(chosen.finding(), view, filmScale, this::label);
            if (cut.fromSeconds() > 0) {
                reader.skipTo(cut.fromSeconds());
            }
            while (reader.read(picture) && picture.timeSeconds() < cut.toSeconds()) {
                double time = picture.timeSeconds();
                paint(picture.bgr(), overlay, nearest(frames, time), strip, time);
                double at = Math.max(0, time - cut.fromSeconds()) + added;
                screen.show(canvas, at);
                shown = at + interval;
                if (held.isPresent() && time >= held.getAsDouble() - interval / 2) {
                    held = OptionalDouble.empty();
                    for (int i = 1; i * interval < holdSeconds; i++) {
                        screen.show(canvas, at + i * interval);
                        added += interval;
                        shown += interval;
                    }
                }
            }
        }
        return shown;
    }

    private String label(int trackId) {
        return choice.names()
                .markOf(choice.film().findings().film().sha256(), trackId)
                .orElse(String.valueOf(trackId));
    }

    private void paint(Mat picture, FindingOverlay overlay, FloorFrame frame, PaperStrip strip, double time) {
        canvas.setTo(Ink.PAPER);
        double scale = picture.rows() / UNITS_HIGH;
        if (frame != null) {
            overlay.draw(new Pen(picture, scale), frame);
        }
        double fit = Math.min(size.width() / (double) picture.cols(), size.pictureHeight() / (double) picture.rows());
        int width = (int) Math.min(size.width(), Math.round(picture.cols() * fit));
        int height = (int) Math.min(size.pictureHeight(), Math.round(picture.rows() * fit));
        int left = (size.width() - width) / 2;
        int top = (size.pictureHeight() - height) / 2;
        Mat place = canvas.submat(top, top + height, left, left + width);
        Imgproc.resize(picture, place, new Size(width, height), 0, 0, Imgproc.INTER_AREA);
        place.release();
        strip.draw(new Pen(canvas, size.width() / (UNITS_HIGH * 16 / 9)), size.pictureHeight(), time);
    }

    private NavigableMap<Double, FloorFrame> frames(Cut cut) {
        return tracks.frames()
                .filter(f -> f.timeSeconds() >= cut.fromSeconds() - 1 && f.timeSeconds() <= cut.toSeconds() + 1)
                .collect(Collectors.toMap(FloorFrame::timeSeconds, f -> f, (a, b) -> a, TreeMap::new));
    }

    /** Null where the tracks do not reach. */
    private static FloorFrame nearest(NavigableMap<Double, FloorFrame> frames, double time) {
        Map.Entry<Double, FloorFrame> before = frames.floorEntry(time);
        Map.Entry<Double, FloorFrame> after = frames.ceilingEntry(time);
        if (before == null || after == null) {
            return before == null ? (after == null ? null : after.getValue()) : before.getValue();
        }
        return time - before.getKey() <= after.getKey() - time ? before.getValue() : after.getValue();
    }

    /** The first moment at which a distance was measured, else the middle one of the decisive frames. */
    private static OptionalDouble decisive(Finding finding) {
        DoubleStream measured = finding.marks().stream()
                .flatMapToDouble(m -> m instanceof Mark.Distance d
                        ? DoubleStream.of(d.timeSeconds())
                        : m instanceof Mark.DistanceToPoint d
                                ? DoubleStream.of(d.timeSeconds())
                                : DoubleStream.empty());
        List<Double> moments = measured.sorted().boxed().toList();
        if (!moments.isEmpty()) {
            return OptionalDouble.of(moments.get(0));
        }
        int frames = finding.frames().size();
        return frames == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(finding.frames().get(frames / 2).timeSeconds());
    }

    @Override
    public void close() {
        canvas.release();
    }
}
