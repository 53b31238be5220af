package floorgauge.app.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import floorgauge.app.drawing.Limbs;
import floorgauge.app.result.FilmSource;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.PlayerSighting;
import floorgauge.court.track.Pose;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;

/**
 * Poses in the COCO keypoint format (COCO, "Data format", sections 1 and 2; Lin and others, 2014): an image a frame, an annotation a
 * player seen in it, 17 joints of three numbers. {@code track_id} and {@code score} stand beside COCO's own fields. A joint the
 * network is less sure of than {@link Limbs#LEAST_SCORE} is not labelled: v = 0 at (0, 0).
 */
final class CocoKeypoints implements Exporter {

    private static final int PERSON = 1;
    private static final int LABELLED = 2;
    private static final int PIXEL_DECIMALS = 1;

    /** Limbs by joints counted from 1, as COCO's own file of people has them. */
    private static final int[][] LIMBS = {
        {16, 14}, {14, 12}, {17, 15}, {15, 13}, {12, 13}, {6, 12}, {7, 13}, {6, 7}, {6, 8}, {7, 9}, {8, 10}, {9, 11},
        {2, 3}, {1, 2}, {1, 3}, {2, 4}, {3, 5}, {4, 6}, {5, 7}
    };

    @Override
    public void write(ExportOrder order, ExportFolder folder) {
        for (FilmChoice choice : order.films()) {
            MeasuredFolder film = choice.film();
            FilmTracks tracks = film.tracks();
            folder.write(
                    film.name() + ".coco.json", file -> write(film.findings().film(), tracks, file));
        }
    }

    private static void write(FilmSource film, FilmTracks tracks, Path file) throws IOException {
        try (OutputStream out = Files.newOutputStream(file);
                JsonGenerator json = new JsonFactory().createGenerator(out)) {
            new Writer(json, film).write(tracks);
        }
    }

    /**
     * One method a part of the file.
     *
     * @param json where it goes
     * @param film whose frames are the images
     */
    private record Writer(JsonGenerator json, FilmSource film) {

        void write(FilmTracks tracks) throws IOException {
            json.writeStartObject();
            json.writeObjectFieldStart("info");
            json.writeStringField("description", film.name());
            json.writeStringField("version", "1.0");
            json.writeEndObject();
            json.writeArrayFieldStart("licenses");
            json.writeEndArray();
            categories();
            json.writeArrayFieldStart("images");
            for (long frame : tracks.frameTimesSeconds().keySet()) {
                image(frame);
            }
            json.writeEndArray();
            json.writeArrayFieldStart("annotations");
            long id = 1;
            for (Iterator<FloorFrame> frames = tracks.frames().iterator(); frames.hasNext(); ) {
                FloorFrame frame = frames.next();
                for (PlayerSighting player : frame.players()) {
                    if (player.observation().pose().isPresent()
                            && player.observation().box().isPresent()) {
                        annotation(id++, frame.frame(), player);
                    }
                }
            }
            json.writeEndArray();
            json.writeEndObject();
            json.writeRaw('\n');
        }

        private void categories() throws IOException {
            json.writeArrayFieldStart("categories");
            json.writeStartObject();
            json.writeNumberField("id", PERSON);
            json.writeStringField("name", "person");
            json.writeStringField("supercategory", "person");
            json.writeArrayFieldStart("keypoints");
            for (Joint joint : Joint.values()) {
                json.writeString(joint.name().toLowerCase(Locale.ROOT));
            }
            json.writeEndArray();
            json.writeArrayFieldStart("skeleton");
            for (int[] limb : LIMBS) {
                json.writeArray(limb, 0, limb.length);
            }
            json.writeEndArray();
            json.writeEndObject();
            json.writeEndArray();
        }

        private void image(long frame) throws IOException {
            json.writeRaw('\n');
            json.writeStartObject();
            // Ids from 1: readers take 0 for no image (common practice).
            json.writeNumberField("id", frame + 1);
            json.writeNumberField("width", film.widthPixels());
            json.writeNumberField("height", film.heightPixels());
            json.writeStringField("file_name", String.format(Locale.ROOT, "%06d.jpg", frame + 1));
            json.writeEndObject();
        }

        private void annotation(long id, long frame, PlayerSighting player) throws IOException {
            ImageBox box = player.observation().box().orElseThrow();
            Pose pose = player.observation().pose().orElseThrow();
            json.writeRaw('\n');
            json.writeStartObject();
            json.writeNumberField("id", id);
            json.writeNumberField("image_id", frame + 1);
            json.writeNumberField("category_id", PERSON);
            json.writeNumberField("track_id", player.trackId());
            json.writeNumberField("iscrowd", 0);
            json.writeNumberField("score", Numbers.rounded(player.observation().score()));
            json.writeNumberField("area", Numbers.rounded(box.area(), PIXEL_DECIMALS));
            json.writeArrayFieldStart("bbox");
            for (double side : new double[] {box.left(), box.top(), box.width(), box.height()}) {
                pixels(side);
            }
            json.writeEndArray();
            keypoints(pose);
            json.writeEndObject();
        }

        private void keypoints(Pose pose) throws IOException {
            List<Keypoint> all =
                    java.util.Arrays.stream(Joint.values()).map(pose::at).toList();
            json.writeNumberField(
                    "num_keypoints",
                    all.stream().filter(k -> k.score() >= Limbs.LEAST_SCORE).count());
            json.writeArrayFieldStart("keypoints");
            for (Keypoint joint : all) {
                boolean sure = joint.score() >= Limbs.LEAST_SCORE;
                pixels(sure ? joint.position().x() : 0);
                pixels(sure ? joint.position().y() : 0);
                json.writeNumber(sure ? LABELLED : 0);
            }
            json.writeEndArray();
        }

        private void pixels(double value) throws IOException {
            json.writeNumber(Numbers.rounded(value, PIXEL_DECIMALS));
        }
    }
}
