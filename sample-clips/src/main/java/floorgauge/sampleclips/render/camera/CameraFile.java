package floorgauge.sampleclips.render.camera;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * A file that gives a real camera: YAML (JSON is YAML too) with {@code width}, {@code height}, {@code K} (9 figures, row by
 * row), {@code distortion} (k1, k2, p1, p2, k3; may be left out), {@code R} (9 figures, court to camera) and {@code t} (3
 * figures, metres).
 */
public final class CameraFile {

    private static final int MOST_DISTORTION = 5;

    private CameraFile() {}

    /**
     * Reads a camera.
     *
     * @throws MendableException with file, field and what was expected
     */
    public static Camera read(Path file) {
        JsonNode root = parse(file);
        if (root == null || !root.isObject()) {
            throw new MendableException(
                    file + ": expected a camera with the fields width, height, K, R and t; see docs/truth.md");
        }
        double[] k = figures(file, root, "K", 9);
        double[] d = root.has("distortion") ? figures(file, root, "distortion", MOST_DISTORTION) : new double[5];
        try {
            Lens lens = new Lens(
                    whole(file, root, "width"),
                    whole(file, root, "height"),
                    k[0],
                    k[4],
                    k[2],
                    k[5],
                    d[0],
                    d[1],
                    d[2],
                    d[3],
                    d[4]);
            return new Camera(lens, figures(file, root, "R", 9), figures(file, root, "t", 3));
        } catch (IllegalArgumentException e) {
            throw new MendableException(file + ": not a camera: " + e.getMessage(), e);
        }
    }

    private static JsonNode parse(Path file) {
        try {
            return new YAMLMapper().readTree(Files.readString(file));
        } catch (NoSuchFileException e) {
            throw new MendableException(file + ": no such camera file", e);
        } catch (JacksonException e) {
            int line = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
            throw new MendableException(file + ": line " + line + ": not YAML or JSON", e);
        } catch (IOException e) {
            throw new MendableException(file + ": can't be read: " + e.getMessage(), e);
        }
    }

    private static int whole(Path file, JsonNode root, String field) {
        JsonNode node = root.get(field);
        if (node == null || !node.isIntegralNumber()) {
            throw new MendableException(file + ": " + field + ": expected a whole number of pixels");
        }
        return node.intValue();
    }

    private static double[] figures(Path file, JsonNode root, String field, int count) {
        JsonNode node = root.get(field);
        if (node == null || !node.isArray() || node.size() != count) {
            throw new MendableException(file + ": " + field + ": expected a list of " + count + " figures");
        }
        double[] out = new double[count];
        for (int i = 0; i < count; i++) {
            if (!node.get(i).isNumber()) {
                throw new MendableException(file + ": " + field + ": figure " + (i + 1) + " is not a number");
            }
            out[i] = node.get(i).doubleValue();
        }
        return out;
    }
}
