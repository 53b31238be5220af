package floorgauge.eval.figures;

import floorgauge.events.Measurement;
import floorgauge.events.diagram.Diagrams;
import floorgauge.events.diagram.PlayerLabels;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.script.ShippedScripts;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Writes a figure for each kind of finding, and one for each of some whole actions, into a folder: {@code java
 * floorgauge.eval.figures.DefinitionFigures docs/figures}. Each kind has the first scene of its list, at the first of the seeds, in which
 * it is found.
 */
public final class DefinitionFigures {

    private static final long[] SEEDS = {300, 301, 302, 303};
    private static final int FRAMES_PER_SECOND = 25;

    private static final Map<FindingKind, List<String>> SCENES = scenes();

    private static final List<String> ACTIONS =
            List.of("floppy-sound", "horns-double-sound", "chin-handoff-sound", "flex-down-sound", "double-drag-sound");

    private DefinitionFigures() {}

    private static Map<FindingKind, List<String>> scenes() {
        Map<FindingKind, List<String>> scenes = new EnumMap<>(FindingKind.class);
        scenes.put(FindingKind.SCREEN, List.of("pin-down-sound"));
        scenes.put(FindingKind.PASS, List.of("pin-down-sound"));
        scenes.put(FindingKind.HANDOFF, List.of("chin-handoff-sound"));
        scenes.put(FindingKind.SHOT, List.of("floppy-curl-sound"));
        scenes.put(FindingKind.CUT, List.of("floppy-curl-sound"));
        scenes.put(FindingKind.OPEN_WINDOW, List.of("floppy-curl-sound", "pin-down-sound", "floppy-sound"));
        scenes.put(FindingKind.SWITCH, List.of("ball-screen-switch-sound"));
        scenes.put(FindingKind.NUMBERS_ADVANTAGE, List.of("ball-screen-hedge-sound", "ball-screen-blitz-sound"));
        scenes.put(FindingKind.SCREEN_CHAIN, List.of("floppy-sound", "flex-down-sound"));
        scenes.put(FindingKind.WEAK_SCREEN, List.of("flex-down-down-misses", "chin-flare-screen-misses"));
        scenes.put(FindingKind.MISSED_SCREEN, List.of("triangle-corner-screen-misses", "horns-stagger-screen-misses"));
        scenes.put(FindingKind.MOVING_SCREEN, List.of("chin-shuffle-screener-moving"));
        scenes.put(
                FindingKind.LATE_PASS,
                List.of("floppy-curl-pass-held", "pin-down-pass-held", "chin-shuffle-pass-held"));
        scenes.put(
                FindingKind.MISSED_WINDOW,
                List.of("ball-screen-hedge-outlet-missed", "ball-screen-blitz-outlet-missed"));
        scenes.put(FindingKind.EARLY_CUT, List.of("floppy-curl-early-cut", "horns-stagger-early-cut"));
        scenes.put(FindingKind.LATE_CUT, List.of("chin-flare-late-cut", "pin-down-late-cut"));
        scenes.put(FindingKind.CROWDED_FLOOR, List.of("chin-down-screen-crowded", "horns-handoff-crowded"));
        scenes.put(FindingKind.COLLAPSED_FLOOR, List.of("chin-down-screen-crowded", "ball-screen-hedge-pass-held"));
        scenes.put(FindingKind.STALLED_BALL, List.of("stalled-ball-stops", "isolation-stalled"));
        scenes.put(FindingKind.NO_OUTLET, List.of("ball-screen-hedge-no-outlet", "ball-screen-hedge-pass-held"));
        scenes.put(FindingKind.TURNOVER, List.of("pin-down-pass-stolen"));
        scenes.put(FindingKind.OFF_SCRIPT, List.of("floppy-curl-pass-held", "flex-down-down-misses"));
        return scenes;
    }

    /** @param arguments the folder to write into */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            throw new IllegalArgumentException("name the folder to write into, such as docs/figures");
        }
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        for (FindingKind kind : SCENES.keySet()) {
            Optional<String> figure = figure(kind);
            if (figure.isPresent()) {
                Files.writeString(
                        folder.resolve(kind.words().replace(' ', '-') + ".svg"), figure.get(), StandardCharsets.UTF_8);
            }
        }
        for (String action : ACTIONS) {
            List<String> drawings = action(action);
            for (int k = 0; k < drawings.size(); k++) {
                Files.writeString(
                        folder.resolve(action + "-" + (k + 1) + ".svg"), drawings.get(k), StandardCharsets.UTF_8);
            }
        }
    }

    /** The figure of a kind; empty where none of its scenes shows it, or no scene is listed for it. */
    public static Optional<String> figure(FindingKind kind) {
        for (String name : SCENES.getOrDefault(kind, List.of())) {
            for (long seed : SEEDS) {
                if (!ScenarioLibrary.list().contains(name)) {
                    continue;
                }
                PlayedScene scene = ScenarioLibrary.load(name, seed);
                for (PossessionFindings possession : measure(scene, seed).possessions()) {
                    Optional<Finding> finding = possession.findings().stream()
                            .filter(f -> f.kind() == kind)
                            .findFirst();
                    if (finding.isPresent()) {
                        return finding.map(
                                f -> Diagrams.ofFinding(scene.rules(), possession, f, PlayerLabels.trackIds())
                                        .panels()
                                        .get(0)
                                        .svg());
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** The drawings of a scene's possessions, in order. */
    public static List<String> action(String name) {
        PlayedScene scene = ScenarioLibrary.load(name, SEEDS[0]);
        List<String> drawings = new ArrayList<>();
        for (PossessionFindings possession : measure(scene, SEEDS[0]).possessions()) {
            Diagrams.ofPossession(scene.rules(), possession, PlayerLabels.trackIds())
                    .panels()
                    .forEach(p -> drawings.add(p.svg()));
        }
        return drawings;
    }

    private static Findings measure(PlayedScene scene, long seed) {
        return Measurement.measure(
                TrueTracks.sample(scene, FRAMES_PER_SECOND, TrackNoise.NONE, seed),
                scene.rules(),
                Standards.defaults(),
                ShippedScripts.all(DefinitionFigures::text));
    }

    private static String text(String resource) {
        try (InputStream in = ShippedScripts.class.getResourceAsStream(resource)) {
            return new String(Objects.requireNonNull(in, resource).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
