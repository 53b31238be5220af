package floorgauge.eval.walk;

import floorgauge.court.track.FilmTracks;
import floorgauge.events.Measurement;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.ScriptReading;
import floorgauge.events.script.Script;
import floorgauge.events.script.ShippedScripts;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioException;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Holds every scene that runs a shipped script against all of them, on true tracks, and prints each that is read wrongly, then how many are
 * right and what it costs.
 *
 * <pre>
 * ScriptWalk FIRST_SEED LAST_SEED
 * </pre>
 */
public final class ScriptWalk {

    private static final double FRAMES_PER_SECOND = 25;
    private static final double MILLIS = 1e6;

    /** Scenarios by the beginnings of their scripts' names; the longest that fits counts. */
    private static final Map<String, List<String>> SCRIPTS_OF = Map.ofEntries(
            Map.entry("chin-shuffle", List.of("chin", "chin-flare")),
            Map.entry("chin-flare", List.of("chin-flare")),
            Map.entry("chin-handoff", List.of("chin")),
            Map.entry("horns-double", List.of("horns-double")),
            Map.entry("horns-stagger", List.of("horns-stagger")),
            Map.entry("flex-cross", List.of("flex")),
            Map.entry("flex-down", List.of("flex")),
            Map.entry("motion-weak", List.of("motion-weak")),
            Map.entry("floppy", List.of("floppy")),
            Map.entry("floppy-curl", List.of("floppy-curl")),
            Map.entry("double-drag", List.of("double-drag")),
            Map.entry("elevator", List.of("elevator")));

    /** What a version's name says of its fault: the step's verb, the label's role, the labels that name who did it. */
    private record Fault(String verb, Role role, Set<FindingKind> labels) {}

    private static final Map<String, Fault> FAULTS = Map.of(
            "misses",
            new Fault("screens", Role.SCREENER, Set.of(FindingKind.WEAK_SCREEN, FindingKind.MISSED_SCREEN)),
            "moving",
            new Fault("screens", Role.SCREENER, Set.of(FindingKind.MOVING_SCREEN)),
            "pass-held",
            new Fault("passes", Role.PASSER, Set.of(FindingKind.LATE_PASS)),
            "pass-stolen",
            new Fault("passes", Role.PASSER, Set.of(FindingKind.TURNOVER)),
            "early-cut",
            new Fault("cuts", Role.CUTTER, Set.of(FindingKind.EARLY_CUT)),
            "late-cut",
            new Fault("cuts", Role.CUTTER, Set.of(FindingKind.LATE_CUT)));

    private final List<Script> scripts = ShippedScripts.all(ScriptWalk::text);
    private final Map<String, int[]> right = new TreeMap<>();
    private long without;
    private long with;
    private int scenes;

    private ScriptWalk() {}

    /** @param arguments FIRST_SEED LAST_SEED */
    public static void main(String[] arguments) {
        ScriptWalk walk = new ScriptWalk();
        for (String name : ScenarioLibrary.list()) {
            String scenario = scenario(name);
            for (long seed = Long.parseLong(arguments[0]);
                    !scenario.isEmpty() && seed <= Long.parseLong(arguments[1]);
                    seed++) {
                walk.take(name, scenario, seed);
            }
        }
        walk.print();
    }

    private static String text(String resource) {
        try (InputStream in = ShippedScripts.class.getResourceAsStream(resource)) {
            return new String(Objects.requireNonNull(in, resource).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String scenario(String name) {
        return SCRIPTS_OF.keySet().stream()
                .filter(s -> name.startsWith(s + "-"))
                .reduce("", (a, b) -> b.length() > a.length() ? b : a);
    }

    private void take(String name, String scenario, long seed) {
        PlayedScene scene;
        try {
            scene = ScenarioLibrary.load(name, seed);
        } catch (ScenarioException e) {
            System.out.println("not played: " + name + " " + seed + ": " + e.getMessage());
            return;
        }
        FilmTracks tracks = TrueTracks.sample(scene, FRAMES_PER_SECOND, TrackNoise.NONE, seed);
        long start = processorTime();
        Measurement.measure(tracks, scene.rules(), Standards.defaults());
        long between = processorTime();
        Findings findings = Measurement.measure(tracks, scene.rules(), Standards.defaults(), scripts);
        without += between - start;
        with += processorTime() - between;
        scenes++;
        ScriptReading reading = findings.possessions().get(0).script().orElseThrow();
        count("the right script of all", SCRIPTS_OF.get(scenario).contains(reading.script()), name, seed, reading);
        if (name.endsWith("-sound")) {
            count("sound, without a breakdown", reading.breakdown().isEmpty(), name, seed, reading);
            return;
        }
        FAULTS.forEach((word, fault) -> {
            Set<String> atFault = atFault(scene, seed, fault);
            if (name.contains(word) && !atFault.isEmpty()) {
                count(word, atFault.contains(broken(reading)), name, seed, reading);
            }
        });
    }

    private static long processorTime() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static Set<String> atFault(PlayedScene scene, long seed, Fault fault) {
        return SceneLabeller.label(scene, seed).events().stream()
                .filter(e -> fault.labels().contains(e.kind()) && !e.cantTell().contains(LabelledEvent.EXISTENCE))
                .map(e -> fault.verb() + " " + e.holder(fault.role()).orElseThrow())
                .collect(Collectors.toSet());
    }

    /** Verb and player of the broken step. */
    private static String broken(ScriptReading reading) {
        if (reading.breakdown().isEmpty()) {
            return "";
        }
        String[] words =
                reading.steps().get(reading.breakdown().getAsInt()).words().split(" ");
        return reading.roles().stream()
                .filter(r -> r.role().equals(words[0]))
                .map(r -> words[1] + " " + r.trackId())
                .findFirst()
                .orElse("");
    }

    private void count(String what, boolean isRight, String name, long seed, ScriptReading reading) {
        int[] counts = right.computeIfAbsent(what, w -> new int[2]);
        counts[0] += isRight ? 1 : 0;
        counts[1]++;
        if (!isRight) {
            System.out.println(what + ": " + name + " " + seed + ": " + reading.sentence());
        }
    }

    private void print() {
        right.forEach((what, counts) -> System.out.printf(Locale.ROOT, "%-28s %d of %d%n", what, counts[0], counts[1]));
        System.out.printf(
                Locale.ROOT,
                "%d scenes: %.1f ms of processor time each, %.1f ms more with %d scripts%n",
                scenes,
                without / MILLIS / scenes,
                (with - without) / MILLIS / scenes,
                scripts.size());
    }
}
