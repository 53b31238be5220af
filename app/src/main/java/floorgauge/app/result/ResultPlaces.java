package floorgauge.app.result;

import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Where films' results lie below a place that was named. */
public final class ResultPlaces {

    /** The file that makes a folder one film's results. */
    public static final String FINDINGS = "findings.json";

    private ResultPlaces() {}

    /**
     * Folders of one film each: the place itself, or those in it, in the order of their names; hidden ones are left out.
     *
     * @throws MendableException where there is no such folder, or it cannot be read
     */
    public static List<Path> below(Path place) {
        if (Files.isRegularFile(place.resolve(FINDINGS))) {
            return List.of(place);
        }
        if (!Files.isDirectory(place)) {
            throw new MendableException("no such folder of results: " + place + "; name what measure wrote");
        }
        try (Stream<Path> list = Files.list(place)) {
            return list.filter(f -> !f.getFileName().toString().startsWith("."))
                    .filter(f -> Files.isRegularFile(f.resolve(FINDINGS)))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new MendableException("cannot look into " + place + ": " + e.getMessage() + "; check its rights", e);
        }
    }
}
