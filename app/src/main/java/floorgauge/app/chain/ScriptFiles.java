package floorgauge.app.chain;

import floorgauge.court.failure.MendableException;
import floorgauge.events.script.Script;
import floorgauge.events.script.ScriptFile;
import floorgauge.events.script.ShippedScripts;
import floorgauge.events.yaml.NearestWord;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Reads the scripts that were asked for: shipped ones by name, a team's own from files. */
final class ScriptFiles {

    /** Asks for every shipped script. */
    private static final String ALL = "all";

    private ScriptFiles() {}

    /**
     * Reads them in the order in which they were named.
     *
     * @throws MendableException where a script is unknown, cannot be read, or cannot be run
     */
    static List<Script> read(List<String> named) {
        return named.stream().flatMap(ScriptFiles::one).distinct().toList();
    }

    private static Stream<Script> one(String named) {
        if (named.equals(ALL)) {
            return ShippedScripts.all(ScriptFiles::shipped).stream();
        }
        if (ShippedScripts.names().contains(named)) {
            String resource = ShippedScripts.resource(named);
            return Stream.of(ScriptFile.read(shipped(resource), resource));
        }
        Path file = Path.of(named);
        if (!Files.exists(file) && !named.contains(".") && !named.contains("/")) {
            throw new MendableException("no script '" + named + "' ships with the program; "
                    + NearestWord.hint(named, ShippedScripts.names()) + " A script of your own is named by its file");
        }
        return Stream.of(ScriptFile.read(new SettingFiles().text(file), named));
    }

    private static String shipped(String resource) {
        try (InputStream in = ShippedScripts.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks " + resource);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + resource, e);
        }
    }
}
