package floorgauge.sampleclips.scenario;

import floorgauge.court.failure.MendableException;
import floorgauge.sampleclips.scene.Scene;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The scenarios that ship with the project, and scenarios from files. A name is that of the file and that of the version:
 * {@code pin-down-sound}, {@code pin-down-screen-misses}.
 */
public final class ScenarioLibrary {

    private static final String FOLDER = "/scenarios/";

    private ScenarioLibrary() {}

    /** Names of all scenes of the library, in a fixed order. */
    public static List<String> list() {
        List<String> names = new ArrayList<>();
        for (String name : index()) {
            read(name).versions().keySet().forEach(version -> names.add(name + "-" + version));
        }
        return names;
    }

    /** One line about a scene: the scenario's title. */
    public static String title(String name) {
        return find(name).scenario().title();
    }

    /**
     * @param name as {@link #list} gives it
     * @param seed what varies: people, kits, small shifts of places and times, the side of the floor
     * @throws MendableException where there is no such scene
     */
    public static PlayedScene load(String name, long seed) {
        Found found = find(name);
        return Choreographer.play(found.scenario(), found.version(), seed);
    }

    /** The faults of a scene's version; none for a sound one. */
    static List<Fault> faults(String name) {
        Found found = find(name);
        return found.scenario().versions().get(found.version());
    }

    /**
     * A scenario of the user's own.
     *
     * @param file YAML; the scene's name is the file's without its ending, and the version's
     * @param version {@code sound} or one of the file's versions
     * @throws MendableException where the file is not a scenario that can be played
     */
    public static Scene load(Path file, String version, long seed) {
        Scenario scenario = readFile(file);
        if (!scenario.versions().containsKey(version)) {
            throw new ScenarioException(file + ": no version '" + version + "'; expected one of "
                    + String.join(", ", scenario.versions().keySet()));
        }
        return Choreographer.play(scenario, version, seed);
    }

    /** Versions of a scenario of the user's own, {@code sound} first. */
    public static List<String> versions(Path file) {
        return List.copyOf(readFile(file).versions().keySet());
    }

    private static Scenario readFile(Path file) {
        try {
            String name = file.getFileName().toString().replaceFirst("\\.ya?ml$", "");
            return ScenarioReader.read(file.toString(), name, Files.readString(file));
        } catch (IOException e) {
            throw new MendableException(file + ": can't be read: " + e.getMessage(), e);
        }
    }

    private record Found(Scenario scenario, String version) {}

    private static Found find(String name) {
        for (String scenario : index()) {
            if (name.startsWith(scenario + "-")) {
                Scenario read = read(scenario);
                String version = name.substring(scenario.length() + 1);
                if (read.versions().containsKey(version)) {
                    return new Found(read, version);
                }
            }
        }
        throw new MendableException("no scenario '" + name + "' in the library; --list names them");
    }

    private static List<String> index() {
        return text("index.txt").lines().filter(l -> !l.isBlank()).toList();
    }

    private static Scenario read(String name) {
        return ScenarioReader.read(name + ".yaml", name, text(name + ".yaml"));
    }

    private static String text(String file) {
        try (InputStream in = ScenarioLibrary.class.getResourceAsStream(FOLDER + file)) {
            if (in == null) {
                throw new IllegalStateException("the library lacks " + file);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("the library's " + file + " can't be read", e);
        }
    }
}
