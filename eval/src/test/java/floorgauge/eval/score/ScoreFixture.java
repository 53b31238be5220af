package floorgauge.eval.score;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Unit;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.FilmReference;
import floorgauge.sampleclips.labels.LabelWriter;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.LabelledFigure;
import floorgauge.sampleclips.labels.LabelledPerson;
import floorgauge.sampleclips.labels.SceneReference;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * Writes label files and results of invented films. Two people stand 5 m apart; person 1 sets a screen for person 2. In the
 * results person 1 is track 11 and person 2 is track 12.
 */
final class ScoreFixture {

    static final double SECONDS = 20;
    static final int FRAMES = 100;

    private final Path labels;
    private final Path results;

    ScoreFixture(Path folder) throws IOException {
        labels = Files.createDirectories(folder.resolve("labels"));
        results = Files.createDirectories(folder.resolve("results"));
    }

    Path labels() {
        return labels;
    }

    Path results() {
        return results;
    }

    /** A digest of its own for each number. */
    static String digest(int number) {
        return String.format(Locale.ROOT, "%064x", number);
    }

    Path label(String name, int digest, String annotator, List<LabelledPerson> people, List<LabelledEvent> events)
            throws IOException {
        FilmLabels film = new FilmLabels(
                Optional.of(new FilmReference(name + ".mp4", digest(digest))),
                Optional.of(new SceneReference(digest < 2 ? "pin-down-sound" : "floppy-sound", digest)),
                annotator,
                1,
                "fiba",
                Optional.empty(),
                people,
                List.of(),
                events,
                List.of());
        Path file = labels.resolve(name + "-" + annotator + ".labels.json");
        LabelWriter.write(film, file);
        return file;
    }

    static List<LabelledPerson> people() {
        return List.of(
                new LabelledPerson(1, LabelledPerson.Side.ATTACK, OptionalInt.of(7), Optional.empty()),
                new LabelledPerson(2, LabelledPerson.Side.ATTACK, OptionalInt.of(9), Optional.empty()));
    }

    static LabelledEvent screen(String id, double at, double gap, int grade) {
        return new LabelledEvent(
                id,
                FindingKind.SCREEN,
                Optional.of("down screen"),
                at - 0.5,
                OptionalDouble.of(at),
                at + 0.5,
                List.of(new RoleHolder(Role.SCREENER, 1), new RoleHolder(Role.USER, 2)),
                List.of(new LabelledFigure("gap", gap, Unit.METRES)),
                new TreeMap<>(),
                OptionalInt.of(grade),
                List.of(),
                Optional.empty());
    }

    /** Labelled tracks beside a label file: both people, every frame. */
    static void truthTracks(Path labelFile) throws IOException {
        Files.writeString(
                labelFile.resolveSibling(labelFile.getFileName().toString().replace(".labels.json", ".mot.txt")),
                tracks(1, 2, FRAMES));
    }

    static String tracks(int first, int second, int frames) {
        StringBuilder text = new StringBuilder();
        for (int f = 1; f <= frames; f++) {
            text.append(f).append(',').append(first).append(",10,10,20,60,1,0,0,0\n");
            text.append(f).append(',').append(second).append(",100,10,20,100,1,5,0,0\n");
        }
        return text.toString();
    }

    /** A finding's JSON: a screen of track 11 for track 12. */
    static String finding(String kind, double at, double gap, double quality, double probability) {
        return """
                {"kind":"%s","flag":false,"label":"down screen","fromSeconds":%s,"toSeconds":%s,"sentence":"s",
                 "probability":%s,"roles":[{"role":"screener","playerId":11},{"role":"user","playerId":12}],
                 "figures":[{"name":"gap","value":%s,"standardError":0.1,"unit":"m"},
                            {"name":"quality","value":%s,"standardError":null,"unit":"of 100"}],
                 "frames":[],"ticks":[{"timeSeconds":%s,"standardErrorSeconds":0.04,"words":"screen"}],
                 "marks":[],"notSeen":[]}""".formatted(kind, at - 0.4, at + 0.4, probability, gap, quality, at);
    }

    Path result(String name, int digest, List<String> findings) throws IOException {
        Path folder = Files.createDirectories(results.resolve(name));
        String json = """
                {"format":"floorgauge-findings","version":1,"run":"r",
                 "film":{"name":"%s.mp4","sha256":"%s","widthPixels":1,"heightPixels":1,"durationSeconds":%s,"frames":%d},
                 "court":{"rules":"%s","source":"points","status":"good","reason":"r","camera":"%s"},
                 "possessions":[{"number":1,"fromSeconds":1,"toSeconds":15,"findings":[%s]}]}""".formatted(
                        name,
                        digest(digest),
                        SECONDS,
                        FRAMES,
                        digest % 2 == 0 ? "fiba" : "nfhs",
                        digest == 3 ? "moving" : "still",
                        String.join(",", findings));
        Files.writeString(folder.resolve("findings.json"), json);
        Files.writeString(folder.resolve("tracks.mot.txt"), tracks(11, 12, FRAMES - 10));
        return folder;
    }

    /** Four films, each with three labelled screens, of which two are found and one false one is. */
    void fourFilms() throws IOException {
        for (int i = 0; i < 4; i++) {
            Path file = label(
                    "film" + i,
                    i,
                    "a",
                    people(),
                    List.of(screen("s1", 3, 0.2, 4), screen("s2", 8, 0.5, 2), screen("s3", 13, 0.1, 5)));
            truthTracks(file);
            List<String> findings = new ArrayList<>();
            findings.add(finding("screen", 3.1, 0.25, 70, 0.9));
            findings.add(finding("screen", 8.0, 0.4, 30, 0.8));
            findings.add(finding("screen", 17.0, 0.4, 30, 0.6));
            result("film" + i, i, findings);
        }
    }
}
