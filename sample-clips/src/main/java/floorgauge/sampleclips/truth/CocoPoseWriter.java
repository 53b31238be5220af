package floorgauge.sampleclips.truth;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Writes poses in the COCO keypoint format (Lin and others, 2014): an image a frame, an annotation a person whose box meets
 * the picture. Image ids are frame indices from 0. Annotations carry {@code track_id} beside COCO's own fields.
 */
public final class CocoPoseWriter implements AutoCloseable {

    private final Writer out;
    private final JsonGenerator json;
    private final FilmHead head;
    private final StringWriter annotations = new StringWriter();
    private final JsonGenerator annotationJson;
    private long nextId = 1;

    /** @throws UncheckedIOException if the file cannot be written */
    public CocoPoseWriter(Path file, FilmHead head) {
        this.head = head;
        try {
            out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
            json = new JsonFactory().createGenerator(out);
            annotationJson = new JsonFactory().createGenerator(annotations);
            json.writeStartObject();
            writeCategories();
            json.writeFieldName("images");
            json.writeStartArray();
            annotationJson.writeStartArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void writeCategories() throws IOException {
        json.writeFieldName("categories");
        json.writeStartArray();
        json.writeStartObject();
        json.writeNumberField("id", 1);
        json.writeStringField("name", "person");
        json.writeFieldName("keypoints");
        json.writeStartArray();
        for (Joint joint : Joint.values()) {
            json.writeString(joint.name().toLowerCase(Locale.ROOT));
        }
        json.writeEndArray();
        json.writeEndObject();
        json.writeEndArray();
    }

    /** Adds a frame; frames come in order. */
    public void write(FrameTruth frame) {
        try {
            json.writeRaw("\n");
            json.writeStartObject();
            json.writeNumberField("id", frame.index());
            json.writeStringField("file_name", head.film() + "#" + frame.index());
            json.writeNumberField("width", head.width());
            json.writeNumberField("height", head.height());
            json.writeEndObject();
            for (PersonTruth p : frame.people()) {
                if (p.box().isPresent()) {
                    writePerson(frame.index(), p, p.box().get());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void writePerson(long image, PersonTruth p, ImageBox box) throws IOException {
        annotationJson.writeRaw("\n");
        annotationJson.writeStartObject();
        annotationJson.writeNumberField("id", nextId++);
        annotationJson.writeNumberField("image_id", image);
        annotationJson.writeNumberField("category_id", 1);
        annotationJson.writeNumberField("track_id", p.state().person().id());
        annotationJson.writeNumberField("iscrowd", 0);
        annotationJson.writeFieldName("area");
        annotationJson.writeNumber(TruthWriter.rounded(box.area(), 1));
        annotationJson.writeFieldName("bbox");
        numbers(box.left(), box.top(), box.width(), box.height());
        writeJoints(p);
        annotationJson.writeEndObject();
    }

    private void writeJoints(PersonTruth p) throws IOException {
        double[] flat = new double[3 * Joint.values().length];
        int labelled = 0;
        for (Joint joint : Joint.values()) {
            JointTruth j = p.at(joint);
            if (j.visibility() != Visibility.OUTSIDE) {
                int i = 3 * joint.ordinal();
                flat[i] = j.pixel().orElseThrow().x();
                flat[i + 1] = j.pixel().orElseThrow().y();
                flat[i + 2] = j.visibility().coco();
                labelled++;
            }
        }
        annotationJson.writeNumberField("num_keypoints", labelled);
        annotationJson.writeFieldName("keypoints");
        numbers(flat);
    }

    private void numbers(double... values) throws IOException {
        annotationJson.writeStartArray();
        for (double value : values) {
            annotationJson.writeNumber(TruthWriter.rounded(value, 1));
        }
        annotationJson.writeEndArray();
    }

    @Override
    public void close() {
        try (out) {
            annotationJson.writeEndArray();
            annotationJson.close();
            json.writeEndArray();
            json.writeFieldName("annotations");
            json.writeRawValue(annotations.toString());
            json.writeEndObject();
            json.writeRaw("\n");
            json.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
