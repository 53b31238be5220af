package floorgauge.sampleclips.truth;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.camera.Lens;
import floorgauge.sampleclips.scene.Person;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * Writes a film's truth as it is rendered, one line of JSON a frame. The fields are those of {@code truth.schema.json} and
 * {@code docs/truth.md}. A camera is written with the first frame and again with each frame where it differs.
 */
public final class TruthWriter implements AutoCloseable {

    /** Version of the schema. */
    public static final int VERSION = 1;

    private final Writer out;
    private final JsonGenerator json;
    private Camera lastCamera;

    /** @throws UncheckedIOException if the file cannot be written */
    public TruthWriter(Path file, FilmHead head) {
        try {
            out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
            json = new JsonFactory().createGenerator(out);
            json.writeStartObject();
            json.writeStringField("schema", "film-truth");
            json.writeNumberField("version", VERSION);
            writeHead(head);
            json.writeFieldName("frames");
            json.writeStartArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void writeHead(FilmHead head) throws IOException {
        json.writeStringField("film", head.film());
        json.writeStringField("scenario", head.scenario());
        json.writeNumberField("seed", head.seed());
        json.writeStringField("cameraStyle", head.cameraStyle());
        json.writeNumberField("width", head.width());
        json.writeNumberField("height", head.height());
        number("nominalFramesPerSecond", head.nominalFramesPerSecond(), 6);
        json.writeStringField("rules", head.rules().name());
        json.writeFieldName("people");
        json.writeStartArray();
        for (Person p : head.people()) {
            json.writeRaw("\n");
            json.writeStartObject();
            json.writeNumberField("id", p.id());
            json.writeNumberField("number", p.jerseyNumber());
            json.writeStringField("name", p.name());
            json.writeStringField("team", p.team().name());
            number("heightMetres", p.heightMetres(), 3);
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    /** Adds a frame; frames come in order. */
    public void write(FrameTruth frame) {
        try {
            json.writeRaw("\n");
            json.writeStartObject();
            json.writeNumberField("index", frame.index());
            number("time", frame.timeSeconds(), 6);
            number("sceneTime", frame.sceneSeconds(), 6);
            if (!same(frame.camera(), lastCamera)) {
                writeCamera(frame.camera());
                lastCamera = frame.camera();
            }
            json.writeFieldName("people");
            json.writeStartArray();
            for (PersonTruth p : frame.people()) {
                writePerson(p);
            }
            json.writeEndArray();
            if (frame.ball().isPresent()) {
                writeBall(frame.ball().get());
            }
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean same(Camera a, Camera b) {
        return b != null
                && a.lens().equals(b.lens())
                && Arrays.equals(a.rotation(), b.rotation())
                && Arrays.equals(a.translation(), b.translation());
    }

    private void writeCamera(Camera camera) throws IOException {
        Lens l = camera.lens();
        json.writeFieldName("camera");
        json.writeStartObject();
        array("K", 9, l.fx(), 0, l.cx(), 0, l.fy(), l.cy(), 0, 0, 1);
        array("distortion", 9, l.k1(), l.k2(), l.p1(), l.p2(), l.k3());
        array("R", 12, camera.rotation());
        array("t", 9, camera.translation());
        array("floorToPixel", 12, camera.homographyFloorToPixel());
        json.writeEndObject();
    }

    private void writePerson(PersonTruth p) throws IOException {
        json.writeRaw("\n ");
        json.writeStartObject();
        json.writeNumberField("id", p.state().person().id());
        if (p.box().isPresent()) {
            ImageBox b = p.box().get();
            array("box", 1, b.left(), b.top(), b.width(), b.height());
        }
        number("visible", p.visibleFraction(), 3);
        array("floor", 3, p.state().position().xMetres(), p.state().position().yMetres());
        array("velocity", 3, p.state().velocityXMetresPerSecond(), p.state().velocityYMetresPerSecond());
        number("facing", Math.IEEEremainder(p.state().facingRadians(), 2 * Math.PI), 3);
        number("jump", p.state().jumpMetres(), 3);
        json.writeStringField("action", p.state().action().name());
        JointTruth left = p.at(Joint.LEFT_ANKLE);
        JointTruth right = p.at(Joint.RIGHT_ANKLE);
        array("leftAnkle", 3, left.xMetres(), left.yMetres(), left.zMetres());
        array("rightAnkle", 3, right.xMetres(), right.yMetres(), right.zMetres());
        json.writeEndObject();
    }

    private void writeBall(BallTruth ball) throws IOException {
        json.writeFieldName("ball");
        json.writeStartObject();
        array(
                "at",
                3,
                ball.state().xMetres(),
                ball.state().yMetres(),
                ball.state().zMetres());
        if (ball.pixel().isPresent()) {
            array("pixel", 2, ball.pixel().get().x(), ball.pixel().get().y());
            number("radiusPixels", ball.radiusPixels(), 2);
        }
        number("visible", ball.visibleFraction(), 3);
        if (ball.state().controlledBy().isPresent()) {
            json.writeNumberField("controlledBy", ball.state().controlledBy().getAsInt());
        }
        json.writeEndObject();
    }

    private void number(String field, double value, int decimals) throws IOException {
        json.writeFieldName(field);
        json.writeNumber(rounded(value, decimals));
    }

    private void array(String field, int decimals, double... values) throws IOException {
        json.writeFieldName(field);
        json.writeStartArray();
        for (double value : values) {
            json.writeNumber(rounded(value, decimals));
        }
        json.writeEndArray();
    }

    /** The shortest decimal text of a value rounded half up. */
    static String rounded(double value, int decimals) {
        BigDecimal r = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        return r.signum() == 0 ? "0" : r.stripTrailingZeros().toPlainString();
    }

    @Override
    public void close() {
        try (out) {
            json.writeEndArray();
            json.writeEndObject();
            json.writeRaw("\n");
            json.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
