package floorgauge.eval.film;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import floorgauge.eval.ball.BallTruth;
import floorgauge.eval.pose.PoseFrame;
import floorgauge.eval.pose.PosedPerson;
import floorgauge.eval.tracking.MotChallengeFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.zip.GZIPInputStream;

/**
 * What stands beside a rendered film; the formats are described in {@code docs/truth.md}.
 *
 * @param players boxes and floor metres of the players
 * @param poses everyone's joints by frame; coach, referee and bystanders count for nothing
 * @param ball every frame's, without a place in the picture where hardly any of it is seen
 * @param ankles everyone's by frame and id; none of a foot in the air
 */
public record RenderedTruth(
        MotChallengeFile players,
        SortedMap<Long, List<PoseFrame.Truth>> poses,
        List<BallTruth> ball,
        SortedMap<Long, Map<Integer, Ankles>> ankles) {

    /** Where a person's ankles are, straight down on the floor; empty for a foot in the air. */
    public record Ankles(Optional<FloorPoint> left, Optional<FloorPoint> right) {

        public Ankles {
            Objects.requireNonNull(left, "left");
            Objects.requireNonNull(right, "right");
        }
    }

    /** The joint of a foot that stands lies 7 to 8 cm over the floor. */
    private static final double STANDS_UNDER_METRES = 0.12;

    /** Ids from here on are not players'. */
    private static final int FIRST_BYSTANDER = 101;

    /** A ball of which less is seen is hidden. */
    private static final double LEAST_VISIBLE = 0.3;

    private static final ObjectMapper JSON = new ObjectMapper();

    public RenderedTruth {
        Objects.requireNonNull(players, "players");
        poses = new TreeMap<>(poses);
        ball = List.copyOf(ball);
        ankles = new TreeMap<>(ankles);
    }

    /** @param film with its truth beside it */
    public static RenderedTruth beside(Path film) throws IOException {
        String name = film.getFileName().toString().replace(".mp4", "");
        JsonNode truth = read(film.resolveSibling(name + ".truth.json"));
        return new RenderedTruth(
                MotChallengeFile.read(film.resolveSibling(name + ".mot.txt")),
                poses(read(film.resolveSibling(name + ".poses.json"))),
                ball(truth),
                ankles(truth));
    }

    /** The file, or the same compressed. */
    private static JsonNode read(Path file) throws IOException {
        if (Files.exists(file)) {
            return JSON.readTree(file.toFile());
        }
        try (InputStream in =
                new GZIPInputStream(Files.newInputStream(file.resolveSibling(file.getFileName() + ".gz")))) {
            return JSON.readTree(in);
        }
    }

    private static SortedMap<Long, Map<Integer, Ankles>> ankles(JsonNode film) {
        SortedMap<Long, Map<Integer, Ankles>> frames = new TreeMap<>();
        for (JsonNode frame : film.path("frames")) {
            Map<Integer, Ankles> people = new HashMap<>();
            for (JsonNode person : frame.path("people")) {
                people.put(
                        person.path("id").asInt(),
                        new Ankles(standing(person.path("leftAnkle")), standing(person.path("rightAnkle"))));
            }
            frames.put(frame.path("index").asLong(), people);
        }
        return frames;
    }

    private static Optional<FloorPoint> standing(JsonNode ankle) {
        return ankle.size() == 3 && ankle.path(2).asDouble() < STANDS_UNDER_METRES
                ? Optional.of(
                        new FloorPoint(ankle.path(0).asDouble(), ankle.path(1).asDouble()))
                : Optional.empty();
    }

    private static SortedMap<Long, List<PoseFrame.Truth>> poses(JsonNode coco) {
        SortedMap<Long, List<PoseFrame.Truth>> frames = new TreeMap<>();
        for (JsonNode annotation : coco.path("annotations")) {
            if (annotation.path("num_keypoints").asInt() > 0) {
                frames.computeIfAbsent(annotation.path("image_id").asLong(), f -> new ArrayList<>())
                        .add(truth(annotation));
            }
        }
        return frames;
    }

    private static PoseFrame.Truth truth(JsonNode annotation) {
        List<Keypoint> keypoints = new ArrayList<>();
        EnumSet<Joint> labelled = EnumSet.noneOf(Joint.class);
        JsonNode flat = annotation.path("keypoints");
        for (Joint joint : Joint.values()) {
            int i = 3 * joint.ordinal();
            boolean there = flat.path(i + 2).asInt() > 0;
            keypoints.add(new Keypoint(
                    new PixelPoint(flat.path(i).asDouble(), flat.path(i + 1).asDouble()), there ? 1 : 0));
            if (there) {
                labelled.add(joint);
            }
        }
        JsonNode b = annotation.path("bbox");
        ImageBox box = new ImageBox(
                b.path(0).asDouble(),
                b.path(1).asDouble(),
                b.path(2).asDouble(),
                b.path(3).asDouble());
        PosedPerson person = new PosedPerson(
                new Pose(keypoints), labelled, annotation.path("area").asDouble(), box);
        return new PoseFrame.Truth(person, annotation.path("track_id").asInt() >= FIRST_BYSTANDER);
    }

    private static List<BallTruth> ball(JsonNode film) {
        List<BallTruth> instants = new ArrayList<>();
        for (JsonNode frame : film.path("frames")) {
            JsonNode ball = frame.path("ball");
            if (!ball.isMissingNode()) {
                JsonNode at = ball.path("at");
                FloorPoint floor =
                        new FloorPoint(at.path(0).asDouble(), at.path(1).asDouble());
                instants.add(new BallTruth(
                        frame.path("time").asDouble(),
                        pixel(ball),
                        Optional.of(new BallTruth.Place(floor, at.path(2).asDouble()))));
            }
        }
        return instants;
    }

    private static Optional<PixelPoint> pixel(JsonNode ball) {
        JsonNode pixel = ball.path("pixel");
        return pixel.isMissingNode() || ball.path("visible").asDouble() < LEAST_VISIBLE
                ? Optional.empty()
                : Optional.of(
                        new PixelPoint(pixel.path(0).asDouble(), pixel.path(1).asDouble()));
    }
}
