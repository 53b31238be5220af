package floorgauge.sampleclips.truth;

import floorgauge.court.failure.MendableException;
import floorgauge.sampleclips.labels.FilmReference;
import floorgauge.sampleclips.labels.LabelWriter;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import floorgauge.sampleclips.scenario.PlayedScene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Writes the true events of a scene beside the film that it was drawn to, as a label file of that film. */
public final class EventTruth {

    private EventTruth() {}

    /**
     * @param seed the scene was played with
     * @param film a whole film; the label file takes its name with {@code .labels.json} for the ending
     * @return the label file
     * @throws MendableException if the folder cannot be written
     */
    public static Path write(PlayedScene scene, long seed, Path film) {
        String name = film.getFileName().toString();
        Path file = film.resolveSibling(name.substring(0, name.lastIndexOf('.')) + ".labels.json");
        try {
            FilmReference drawn = new FilmReference(name, digest(film));
            LabelWriter.write(SceneLabeller.label(scene, seed).of(drawn), file);
        } catch (IOException e) {
            throw new MendableException(
                    file + ": cannot write the labels here (" + e.getMessage()
                            + "); choose a folder that can be written",
                    e);
        }
        return file;
    }

    private static String digest(Path film) throws IOException {
        try {
            MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(sha256.digest(Files.readAllBytes(film)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
