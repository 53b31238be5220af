package floorgauge.app.chain;

import floorgauge.app.drawing.Crop;
import floorgauge.app.sheet.ShownFrame;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerSighting;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.KeyFrame;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfInt;
import org.opencv.core.Rect;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;

/**
 * Cuts the decisive frames out of a film in one reading of it. All frames of a finding show the same part of the picture,
 * so that what moves between them is the players.
 */
final class KeyFramePictures {

    /** Wide enough for print at a third of a page, 300 dots an inch. */
    private static final int MOST_PIXELS_WIDE = 720;

    private static final int JPEG_QUALITY = 84;

    private final FilmTracks tracks;
    private final List<Finding> findings;
    private final Map<Long, FloorFrame> frames;

    private KeyFramePictures(FilmTracks tracks, List<Finding> findings) {
        this.tracks = tracks;
        this.findings = findings;
        FrameClock clock = new FrameClock(tracks.frameTimesSeconds());
        Collection<Long> wanted = findings.stream()
                .flatMap(f -> f.frames().stream())
                .map(k -> clock.nearest(k.timeSeconds()))
                .collect(Collectors.toSet());
        frames = tracks.frames()
                .filter(f -> wanted.contains(f.frame()))
                .collect(Collectors.toMap(FloorFrame::frame, Function.identity()));
    }

    /**
     * The frames of one finding.
     *
     * @param finding index of the finding
     * @param key the moment
     * @param crop the part shown
     */
    private record Wanted(int finding, KeyFrame key, Crop crop) {}

    /**
     * Reads the film up to the last decisive frame.
     *
     * @param maxWidth width that the tracks' pixels were measured at
     * @return the frames of each finding, in the order of the findings
     */
    static List<List<ShownFrame>> read(Path film, int maxWidth, FilmTracks tracks, List<Finding> findings) {
        return new KeyFramePictures(tracks, findings).cut(film, maxWidth);
    }

    private List<List<ShownFrame>> cut(Path film, int maxWidth) {
        List<List<ShownFrame>> shown = new ArrayList<>();
        findings.forEach(f -> shown.add(new ArrayList<>()));
        if (frames.isEmpty()) {
            return shown;
        }
        try (FilmReader reader = FilmReader.open(film, maxWidth);
                FilmFrame picture = new FilmFrame()) {
            SortedMap<Long, List<Wanted>> wanted =
                    wanted(reader.info().width(), reader.info().height());
            while (!wanted.isEmpty() && reader.read(picture)) {
                List<Wanted> here = wanted.remove(picture.index());
                if (here != null) {
                    for (Wanted one : here) {
                        byte[] jpeg = jpeg(picture.bgr(), one.crop());
                        shown.get(one.finding())
                                .add(ShownFrame.of(one.key(), frames.get(picture.index()), one.crop(), jpeg));
                    }
                }
            }
        }
        return shown;
    }

    private SortedMap<Long, List<Wanted>> wanted(int width, int height) {
        FrameClock clock = new FrameClock(tracks.frameTimesSeconds());
        SortedMap<Long, List<Wanted>> wanted = new TreeMap<>();
        for (int i = 0; i < findings.size(); i++) {
            Finding finding = findings.get(i);
            Crop crop = Crop.around(boxes(finding, clock), width, height);
            for (KeyFrame key : finding.frames()) {
                wanted.computeIfAbsent(clock.nearest(key.timeSeconds()), k -> new ArrayList<>())
                        .add(new Wanted(i, key, crop));
            }
        }
        return wanted;
    }

    /** The boxes of those who have a role, in all frames of a finding. */
    private List<ImageBox> boxes(Finding finding, FrameClock clock) {
        List<ImageBox> boxes = new ArrayList<>();
        for (KeyFrame key : finding.frames()) {
            for (PlayerSighting player :
                    frames.get(clock.nearest(key.timeSeconds())).players()) {
                boolean role = finding.roles().stream().anyMatch(r -> r.trackId() == player.trackId());
                if (role) {
                    player.observation().box().ifPresent(boxes::add);
                }
            }
        }
        return boxes;
    }

    private static byte[] jpeg(Mat picture, Crop crop) {
        Mat part = picture.submat(new Rect(crop.left(), crop.top(), crop.width(), crop.height()));
        Mat scaled = new Mat();
        MatOfByte bytes = new MatOfByte();
        MatOfInt quality = new MatOfInt(Imgcodecs.IMWRITE_JPEG_QUALITY, JPEG_QUALITY);
        try {
            double scale = Math.min(1, MOST_PIXELS_WIDE / (double) crop.width());
            Imgproc.resize(part, scaled, new Size(), scale, scale, Imgproc.INTER_AREA);
            Imgcodecs.imencode(".jpg", scaled, bytes, quality);
            return bytes.toArray();
        } finally {
            part.release();
            scaled.release();
            bytes.release();
            quality.release();
        }
    }
}
