package floorgauge.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.app.InventedFilm;
import floorgauge.eval.tracking.MotChallengeFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TrackExportsTest {

    @TempDir
    private Path folder;

    private ExportOrder order;
    private ExportFolder out;

    @BeforeEach
    void results() throws IOException {
        order = ExportedFilms.everything(ExportedFilms.results(folder, "film"));
        out = ExportFolder.open(folder.resolve("out"));
    }

    /** Milan and others, "MOT16", 2016, table 2: ten comma-separated values, frames and identities from 1. */
    @Test
    void motChallengeTextHoldsTenColumns() throws IOException {
        new MotChallengeTracks().write(order, out);
        Path text = folder.resolve("out/film.txt");
        assertThat(Files.readAllLines(text)).isNotEmpty().allSatisfy(line -> {
            String[] fields = line.split(",");
            assertThat(fields).hasSize(10);
            assertThat(Integer.parseInt(fields[0].strip())).isBetween(1, 150);
            assertThat(Integer.parseInt(fields[1].strip())).isBetween(1, 6);
        });
        assertThat(MotChallengeFile.read(text).rows()).hasSize(6 * 149);
        assertThat(Files.readString(folder.resolve("out/film.seqinfo.ini")))
                .isEqualTo(
                        "[Sequence]\nname=film\nimDir=img1\nframeRate=25\nseqLength=150\nimWidth=1280\nimHeight=720\nimExt=.jpg\n");
    }

    /** COCO, "Data format", sections 1 and 2: ids that refer to each other, boxes of four, keypoints of 3k with v in 0 to 2. */
    @Test
    void cocoKeypointsKeepTheFormat() throws IOException {
        new CocoKeypoints().write(order, out);
        JsonNode coco =
                new ObjectMapper().readTree(folder.resolve("out/film.coco.json").toFile());
        for (String part : new String[] {"info", "licenses", "images", "annotations", "categories"}) {
            assertThat(coco.has(part)).as(part).isTrue();
        }
        JsonNode category = coco.at("/categories/0");
        assertThat(category.get("keypoints")).hasSize(17);
        assertThat(category.at("/keypoints/0").asText()).isEqualTo("nose");
        assertThat(category.at("/keypoints/16").asText()).isEqualTo("right_ankle");
        assertThat(category.get("skeleton"))
                .hasSize(19)
                .allSatisfy(limb -> assertThat(limb)
                        .allSatisfy(joint -> assertThat(joint.asInt()).isBetween(1, 17)));
        Set<Long> images = new HashSet<>();
        coco.get("images")
                .forEach(image ->
                        assertThat(images.add(image.get("id").asLong())).isTrue());
        assertThat(images).hasSize(150);
        Set<Long> annotations = new HashSet<>();
        for (JsonNode annotation : coco.get("annotations")) {
            assertThat(annotations.add(annotation.get("id").asLong())).isTrue();
            assertThat(images).contains(annotation.get("image_id").asLong());
            assertThat(annotation.get("category_id").asInt())
                    .isEqualTo(category.get("id").asInt());
            assertThat(annotation.get("iscrowd").asInt()).isZero();
            assertThat(annotation.get("bbox")).hasSize(4);
            double area = annotation.at("/bbox/2").asDouble()
                    * annotation.at("/bbox/3").asDouble();
            assertThat(Math.abs(annotation.get("area").asDouble() - area)).isLessThan(0.02 * area);
            JsonNode keypoints = annotation.get("keypoints");
            assertThat(keypoints).hasSize(51);
            int labelled = 0;
            for (int i = 2; i < 51; i += 3) {
                assertThat(keypoints.get(i).asInt()).isBetween(0, 2);
                labelled += keypoints.get(i).asInt() > 0 ? 1 : 0;
            }
            assertThat(annotation.get("num_keypoints").asInt()).isEqualTo(labelled);
        }
        // Nobody is seen in the first frame, and player 6 is only predicted in nine.
        assertThat(annotations).hasSize(6 * 149 - 9);
        assertThat(InventedFilm.tracks().players()).hasSize(6);
    }
}
