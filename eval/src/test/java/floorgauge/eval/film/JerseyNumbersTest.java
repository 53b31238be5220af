package floorgauge.eval.film;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.JerseyReading;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import floorgauge.sampleclips.labels.LabelReader;
import floorgauge.sampleclips.labels.LabelledPerson;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import floorgauge.vision.network.ModelFolder;
import floorgauge.vision.network.NumberBelief;
import floorgauge.vision.network.NumberReader;
import floorgauge.vision.number.JerseyLook;
import floorgauge.vision.number.TrackNumbers;
import floorgauge.vision.timing.Cadence;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;

/**
 * Jersey numbers on the sample clips, 1280 x 720, players of 75 to 110 pixels, whose numbers are about 10 pixels high: with the true
 * joints and tracks, so that the reader alone is measured. It was trained on drawn numbers and saw no rendered film.
 */
class JerseyNumbersTest {

    private static final List<String> CLIPS = List.of(
            "pin-down-sound", "pin-down-screen-misses", "elevator-pass-held", "high-ball-screen-screener-moving");

    /** In the picture, maybe behind the body itself: the pose network sees such shoulders too. */
    private static final int IN_PICTURE = 1;

    private record Person(int track, Pose pose) {}

    @Test
    void numbersThatAreToldAreMostlyRight() throws IOException {
        int people = 0;
        int told = 0;
        int right = 0;
        int looks = 0;
        try (NumberReader reader = new NumberReader(ModelFolder.standard())) {
            for (String clip : CLIPS) {
                Map<Integer, OptionalInt> worn = new TreeMap<>();
                for (LabelledPerson p :
                        LabelReader.read(file(clip, ".labels.json")).people()) {
                    worn.put(p.id(), p.number());
                }
                Map<Integer, List<NumberBelief>> seen = seen(clip, reader);
                for (Map.Entry<Integer, List<NumberBelief>> track : seen.entrySet()) {
                    OptionalInt wears = worn.getOrDefault(track.getKey(), OptionalInt.empty());
                    if (wears.isPresent()) {
                        Optional<JerseyReading> reading = TrackNumbers.agreed(track.getValue());
                        people++;
                        looks += track.getValue().size();
                        told += reading.isPresent() ? 1 : 0;
                        right += reading.filter(r -> r.number() == wears.getAsInt())
                                        .isPresent()
                                ? 1
                                : 0;
                        System.out.printf(
                                Locale.ROOT,
                                "%s: person %d wears %d, %d looks, read %s%n",
                                clip,
                                track.getKey(),
                                wears.getAsInt(),
                                track.getValue().size(),
                                reading);
                    }
                }
            }
        }
        System.out.printf(
                Locale.ROOT, "jersey numbers: %d people, %d looks, %d told, %d right%n", people, looks, told, right);
        assertThat(people).isEqualTo(10 * CLIPS.size());
        assertThat(right).as("of %d told", told).isGreaterThanOrEqualTo((int) Math.ceil(0.8 * told));
    }

    private static Path file(String clip, String ending) {
        return Path.of("../sample-clips").resolve(clip + ending);
    }

    private static Map<Integer, List<NumberBelief>> seen(String clip, NumberReader reader) throws IOException {
        Map<Long, List<Person>> truth = truth(file(clip, ".poses.json.gz"));
        Cadence looks = Cadence.about(0.4);
        Map<Integer, List<NumberBelief>> seen = new TreeMap<>();
        try (FilmReader film = FilmReader.open(file(clip, ".mp4"));
                FilmFrame frame = new FilmFrame()) {
            while (film.read(frame)) {
                if (!looks.isDue(frame.timeSeconds())) {
                    continue;
                }
                List<Person> people = truth.getOrDefault(frame.index(), List.of());
                List<Optional<NumberBelief>> beliefs = JerseyLook.read(
                        reader,
                        frame.bgr(),
                        people.stream().map(p -> Optional.of(p.pose())).toList());
                for (int i = 0; i < people.size(); i++) {
                    List<NumberBelief> own = seen.computeIfAbsent(people.get(i).track(), t -> new ArrayList<>());
                    beliefs.get(i).ifPresent(own::add);
                }
            }
        }
        return seen;
    }

    private static Map<Long, List<Person>> truth(Path file) throws IOException {
        Map<Long, List<Person>> frames = new TreeMap<>();
        try (InputStream in = new GZIPInputStream(Files.newInputStream(file))) {
            for (JsonNode annotation : new ObjectMapper().readTree(in).path("annotations")) {
                List<Keypoint> joints = new ArrayList<>();
                for (Joint joint : Joint.values()) {
                    JsonNode flat = annotation.path("keypoints");
                    int at = 3 * joint.ordinal();
                    joints.add(new Keypoint(
                            new PixelPoint(
                                    flat.path(at).asDouble(), flat.path(at + 1).asDouble()),
                            flat.path(at + 2).asInt() >= IN_PICTURE ? 0.9 : 0.1));
                }
                frames.computeIfAbsent(annotation.path("image_id").asLong(), f -> new ArrayList<>())
                        .add(new Person(annotation.path("track_id").asInt(), new Pose(joints)));
            }
        }
        return frames;
    }
}
