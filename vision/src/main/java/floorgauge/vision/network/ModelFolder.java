package floorgauge.vision.network;

import java.nio.file.Path;
import java.util.Objects;

/** Where the network files lie. */
public record ModelFolder(Path path) {

    /** System property that names the folder. */
    public static final String PROPERTY = "floorgauge.models";

    public ModelFolder {
        Objects.requireNonNull(path, "path");
    }

    /** The folder named by the system property {@value #PROPERTY}, else {@code models} in the working folder. */
    public static ModelFolder standard() {
        return new ModelFolder(Path.of(System.getProperty(PROPERTY, "models")));
    }
}
