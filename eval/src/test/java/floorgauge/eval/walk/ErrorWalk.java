package floorgauge.eval.walk;

import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventMark;
import floorgauge.eval.events.EventMatches;
import floorgauge.eval.events.EventScores;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.events.Identities;
import floorgauge.events.Measurement;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.standards.Standards;
import floorgauge.events.standards.StandardsFile;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioException;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Prints, for chosen kinds, what was missed and what was found in vain, scene by scene, then the scores of every kind.
 *
 * <pre>
 * ErrorWalk FIRST_SEED LAST_SEED none|good|poor [SCENE_PATTERN [KIND ...]]
 * ErrorWalk FIRST_SEED LAST_SEED none|good|poor scores
 * </pre>
 *
 * A standards file given as the system property {@code floorgauge.standards} shows what other standards would do.
 *
 * <p>Seeds 300 to 340 are for development. Those from 9001 on are held out: of them no single error is shown, scores alone.
 */
public final class ErrorWalk {

    private static final long HELD_OUT_FROM = 9001;
    private static final double FRAMES_PER_SECOND = 25;
    private static final double SECONDS_PER_HOUR = 3600;

    private final TrackNoise noise;
    private final Standards standards;
    private final Set<FindingKind> listed;
    private final Map<FindingKind, List<EventMatches>> matches = new EnumMap<>(FindingKind.class);
    private final DefenceTally defence = new DefenceTally();
    private final CertaintyTally certainty = new CertaintyTally();
    private final boolean scoresAlone;
    private int sound;
    private int soundFlags;

    private ErrorWalk(TrackNoise noise, Standards standards, Set<FindingKind> listed, boolean scoresAlone) {
        this.noise = noise;
        this.standards = standards;
        this.listed = listed;
        this.scoresAlone = scoresAlone;
    }

    /** @param arguments FIRST_SEED LAST_SEED none|good|poor [scores | SCENE_PATTERN [KIND ...]] */
    public static void main(String[] arguments) throws IOException {
        long first = Long.parseLong(arguments[0]);
        long last = Long.parseLong(arguments[1]);
        boolean scoresAlone = arguments.length == 4 && arguments[3].equals("scores");
        if (last >= HELD_OUT_FROM && !scoresAlone) {
            System.err.println("seeds from " + HELD_OUT_FROM + " on are held out: ask for their scores alone");
            System.exit(2);
        }
        TrackNoise noise = switch (arguments[2]) {
            case "good" -> TrackNoise.GOOD;
            case "poor" -> TrackNoise.POOR;
            default -> TrackNoise.NONE;
        };
        Set<FindingKind> listed = EnumSet.noneOf(FindingKind.class);
        for (int i = 4; i < arguments.length; i++) {
            listed.add(FindingKind.valueOf(arguments[i]));
        }
        ErrorWalk walk = new ErrorWalk(noise, standards(), listed, scoresAlone);
        Pattern pattern = Pattern.compile(arguments.length > 3 && !scoresAlone ? arguments[3] : ".*");
        for (String name : ScenarioLibrary.list()) {
            for (long seed = first; seed <= last && pattern.matcher(name).find(); seed++) {
                walk.take(name, seed);
            }
        }
        walk.print();
    }

    private static Standards standards() throws IOException {
        String file = System.getProperty("floorgauge.standards", "");
        return file.isEmpty()
                ? Standards.defaults()
                : StandardsFile.read(Files.readString(Path.of(file)), file, Standards.defaults());
    }

    private void take(String name, long seed) {
        PlayedScene scene;
        try {
            scene = ScenarioLibrary.load(name, seed);
        } catch (ScenarioException e) {
            System.out.println("not played: " + name + " " + seed + ": " + e.getMessage());
            return;
        }
        FilmLabels labels = SceneLabeller.label(scene, seed);
        List<Finding> findings = Measurement.measure(
                        TrueTracks.sample(scene, FRAMES_PER_SECOND, noise, seed), scene.rules(), standards)
                .all();
        Map<String, LabelledEvent> labelById = new java.util.HashMap<>();
        labels.events().forEach(e -> labelById.put(e.id(), e));
        List<EventMark> results = new ArrayList<>();
        Map<String, Finding> findingById = new java.util.HashMap<>();
        for (Finding finding : findings) {
            EventMark mark = EventMark.of(finding, "f" + results.size());
            results.add(mark);
            findingById.put(mark.id(), finding);
        }
        EventFilm film = new EventFilm(
                name + " " + seed,
                scene.durationSeconds() / SECONDS_PER_HOUR,
                labels.events().stream().map(EventMark::of).toList(),
                results,
                labels.unclear(),
                Optional.of(Identities.same()));
        for (FindingKind kind : FindingKind.values()) {
            EventMatches match = film.only(kind).match(EventTolerance.USUAL);
            matches.computeIfAbsent(kind, k -> new ArrayList<>()).add(match);
            match.pairs()
                    .forEach(p -> defence.take(
                            labelById.get(p.label().id()),
                            findingById.get(p.result().id())));
            certainty.take(kind, match);
            if (listed.contains(kind)) {
                list(film.film(), match, labelById, findingById);
            }
        }
        if (name.endsWith("-sound")) {
            sound++;
            soundFlags += soundFlags(film, findingById);
        }
    }

    /** Flags on a sound scene that its labels do not have either. */
    private int soundFlags(EventFilm film, Map<String, Finding> findingById) {
        int count = 0;
        for (FindingKind kind : FindingKind.values()) {
            if (kind.isFlag()) {
                for (EventMark wrong :
                        film.only(kind).match(EventTolerance.USUAL).falseAlarms()) {
                    count++;
                    if (scoresAlone) {
                        continue;
                    }
                    System.out.println("SOUND  " + film.film() + ": "
                            + findingById.get(wrong.id()).sentence());
                }
            }
        }
        return count;
    }

    private static void list(
            String film, EventMatches match, Map<String, LabelledEvent> labelById, Map<String, Finding> findingById) {
        for (EventMark missed : match.missed()) {
            System.out.println("MISSED " + film + ": " + words(labelById.get(missed.id())));
        }
        for (EventMark wrong : match.falseAlarms()) {
            System.out.println("FALSE  " + film + ": " + words(findingById.get(wrong.id())));
        }
        for (EventMatches.Pair pair : match.pairs()) {
            boolean sameLabel = pair.label().label().equals(pair.result().label());
            if (!sameLabel || pair.rolesSame() < pair.rolesCompared()) {
                System.out.println("DIFFER " + film + ": "
                        + words(labelById.get(pair.label().id())) + "\n       against "
                        + words(findingById.get(pair.result().id())));
            }
        }
    }

    private static String words(LabelledEvent e) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%s (%s) %.2f..%.2f at %.2f",
                e.kind().words(),
                e.label().orElse("-"),
                e.fromSeconds(),
                e.toSeconds(),
                e.atSeconds().orElse(Double.NaN)));
        e.roles().forEach(r -> text.append(' ').append(r.role()).append('=').append(r.trackId()));
        e.figures().forEach(f -> text.append(String.format(Locale.ROOT, " %s=%.2f", f.name(), f.value())));
        return text.append(' ').append(e.words()).toString();
    }

    private static String words(Finding f) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%s (%s) %.2f..%.2f p=%.2f",
                f.kind().words(),
                f.label(),
                f.fromSeconds(),
                f.toSeconds(),
                f.probability()));
        f.roles().forEach(r -> text.append(' ').append(r.role()).append('=').append(r.trackId()));
        f.ticks().forEach(t -> text.append(String.format(Locale.ROOT, " [%s %.2f]", t.words(), t.timeSeconds())));
        f.figures().forEach(g -> text.append(String.format(Locale.ROOT, " %s=%.2f", g.name(), g.value())));
        return text.toString();
    }

    private void print() {
        System.out.printf(
                Locale.ROOT,
                "%-18s %5s %5s %5s %6s %6s %6s %6s %6s %7s%n",
                "kind",
                "found",
                "miss",
                "false",
                "P",
                "R",
                "F1",
                "roles",
                "kinds",
                "onset");
        for (FindingKind kind : FindingKind.values()) {
            EventScores s = EventScores.of(matches.getOrDefault(kind, List.of()));
            System.out.printf(
                    Locale.ROOT,
                    "%-18s %5d %5d %5d %6.3f %6.3f %6.3f %6.3f %6.3f %7.3f%n",
                    kind.words(),
                    s.found(),
                    s.missed(),
                    s.falseAlarms(),
                    s.precision(),
                    s.recall(),
                    s.f1(),
                    s.roleAccuracy(),
                    s.labelAccuracy(),
                    s.onset().medianAbsolute());
            if (kind == FindingKind.PASS || listed.contains(kind)) {
                s.figures()
                        .forEach((name, e) -> System.out.printf(
                                Locale.ROOT, "      %-24s median |error| %.3f%n", name, e.medianAbsolute()));
            }
        }
        defence.print();
        certainty.print();
        System.out.println("sound scenes " + sound + ", false flags on them " + soundFlags);
    }
}
