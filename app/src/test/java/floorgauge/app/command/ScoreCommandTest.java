package floorgauge.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.app.result.Digest;
import floorgauge.app.result.TracksParquet;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FilmTracks;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.events.Measurement;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.standards.StandardsFile;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.FilmReference;
import floorgauge.sampleclips.labels.LabelWriter;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * From tracks to scores on the command line: scenes are played, their tracks measured by {@code measure --tracks}, and the
 * results scored against the scenes' true labels.
 */
class ScoreCommandTest {

    private static final String SCENARIO = "horns-double-sound";
    private static final long FIRST_SEED = 101;
    private static final int FILMS = 20;
    private static final String SCREEN = "\"kind\" : \"screen\"";
    private static final double STRICT_QUALITY = 90;

    @TempDir
    private static Path folder;

    private static Path labels;
    private static Path strictLabels;
    private static Path results;

    @BeforeAll
    static void measure() throws IOException {
        labels = Files.createDirectory(folder.resolve("labels"));
        strictLabels = Files.createDirectory(folder.resolve("strict"));
        results = folder.resolve("results");
        for (int i = 0; i < FILMS; i++) {
            PlayedScene scene = ScenarioLibrary.load(SCENARIO, FIRST_SEED + i);
            FilmTracks tracks = TrueTracks.sample(scene, 25, TrackNoise.GOOD, i);
            Path file = folder.resolve("film" + i + ".parquet");
            TracksParquet.write(tracks, file);
            CommandRun run = CommandRun.of(
                    "measure",
                    "--tracks",
                    file.toString(),
                    "--court",
                    scene.rules().name(),
                    "--out",
                    results.toString());
            assertThat(run.exitCode()).as(run.err()).isZero();
            label(scene, tracks, file, i);
        }
    }

    private static void label(PlayedScene scene, FilmTracks tracks, Path file, int number) throws IOException {
        FilmLabels truth = SceneLabeller.label(scene, FIRST_SEED + number)
                .of(new FilmReference(file.getFileName().toString(), Digest.ofFile(file)));
        LabelWriter.write(truth, labels.resolve("film" + number + ".labels.json"));
        MotChallengeFile.of(TrueTracks.sample(scene, 25, TrackNoise.NONE, number))
                .write(labels.resolve("film" + number + ".mot.txt"));
        LabelWriter.write(strict(truth, tracks, scene.rules()), strictLabels.resolve("film" + number + ".labels.json"));
        MotChallengeFile.of(tracks).write(strictLabels.resolve("film" + number + ".mot.txt"));
    }

    /** The labels of a coach who calls every screen below 75 of 100 weak, where the standards say 50. */
    private static FilmLabels strict(FilmLabels truth, FilmTracks tracks, RuleSet rules) {
        Standards strict = Standards.defaults().with(Setting.SCREEN_WEAK_QUALITY, STRICT_QUALITY);
        List<LabelledEvent> events = new ArrayList<>();
        for (Finding finding : Measurement.measure(tracks, rules, strict).ofKind(FindingKind.WEAK_SCREEN)) {
            events.add(new LabelledEvent(
                    "w" + events.size(),
                    finding.kind(),
                    Optional.empty(),
                    finding.fromSeconds(),
                    OptionalDouble.empty(),
                    finding.toSeconds(),
                    finding.roles(),
                    List.of(),
                    new TreeMap<>(),
                    OptionalInt.empty(),
                    List.of(),
                    Optional.empty()));
        }
        return new FilmLabels(
                truth.film(),
                truth.scene(),
                "strict coach",
                truth.guidelineVersion(),
                truth.rules(),
                truth.end(),
                truth.people(),
                List.of(),
                events,
                List.of());
    }

    @Test
    void oneScreenAndEveryFileAndEveryErrorOpens() throws IOException {
        Path json = folder.resolve("scores.json");
        Path csv = folder.resolve("scores.csv");
        Path errors = folder.resolve("errors.csv");
        Path page = folder.resolve("scores.html");
        CommandRun run = score(
                "--json",
                json.toString(),
                "--csv",
                csv.toString(),
                "--errors",
                errors.toString(),
                "--page",
                page.toString());
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .startsWith(FILMS + " films scored.")
                .contains("event, screen")
                .contains("second annotator")
                .contains("blind guesser")
                .contains("tracks");
        JsonNode scores = new ObjectMapper().readTree(json.toFile());
        assertThat(scores.path("films")).hasSize(FILMS);
        assertThat(scores.path("errors")).isNotEmpty();
        assertThat(Files.readString(csv)).contains("\"event, screen\",F1");
        assertThat(Files.readAllLines(errors)).hasSize(scores.path("errors").size() + 1);
        assertThat(Files.readString(page)).contains("<svg").contains("results/film0/sheet.html#");
        for (JsonNode error : scores.path("errors")) {
            opens(error.path("link").asText());
        }
    }

    /** The sheet is there and holds the place that the link names. */
    private static void opens(String link) throws IOException {
        String[] parts = link.split("#", 2);
        Path sheet = results.resolve(parts[0]);
        assertThat(sheet).exists();
        if (parts.length == 2) {
            assertThat(Files.readString(sheet)).as(link).contains("id=\"" + parts[1] + "\"");
        }
    }

    @Test
    void theSameResultsAreNoWorseThanThemselvesAndLostScreensAre() throws IOException {
        Path baseline = folder.resolve("baseline.json");
        assertThat(score("--json", baseline.toString()).exitCode()).isZero();
        CommandRun same = score("--baseline", baseline.toString());
        assertThat(same.exitCode()).isZero();
        assertThat(same.out()).contains("nothing changed beyond noise");

        Path worse = folder.resolve("worse");
        for (int i = 0; i < FILMS; i++) {
            Path from = results.resolve("film" + i);
            Path to = Files.createDirectories(worse.resolve("film" + i));
            Files.copy(from.resolve("tracks.mot.txt"), to.resolve("tracks.mot.txt"));
            String findings = Files.readString(from.resolve("findings.json"));
            Files.writeString(to.resolve("findings.json"), findings.replace(SCREEN, SCREEN.replace("screen", "cut")));
        }
        CommandRun run = CommandRun.of(
                "score", labels.toString(), "--against", worse.toString(), "--baseline", baseline.toString());
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.out()).contains("worse   event, screen: recall").contains("screen, missed: expected");
    }

    @Test
    void fitsTheStandardsToACoachWhoCallsMoreScreensWeak() throws IOException {
        Path fitted = folder.resolve("fitted.yaml");
        CommandRun run = CommandRun.of(
                "score", strictLabels.toString(), "--against", results.toString(), "--fit", fitted.toString());
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("on films held out, F1 of weak screen goes from")
                .contains("90 % interval");
        Standards standards = StandardsFile.read(Files.readString(fitted), fitted.toString(), Standards.defaults());
        assertThat(standards.of(Setting.SCREEN_WEAK_QUALITY)).isEqualTo(STRICT_QUALITY);
    }

    @Test
    void refusesToFitToTooLittle() throws IOException {
        Path few = Files.createDirectory(folder.resolve("few"));
        Files.copy(labels.resolve("film0.labels.json"), few.resolve("film0.labels.json"));
        Path fitted = folder.resolve("unfitted.yaml");
        CommandRun run =
                CommandRun.of("score", few.toString(), "--against", results.toString(), "--fit", fitted.toString());
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err().lines())
                .singleElement()
                .asString()
                .contains("are too few to fit to: at least 20 on 5 films are needed");
        assertThat(fitted).doesNotExist();
    }

    @Test
    void refusesWhatIsWrongInOneLine() throws IOException {
        refused("--within is 0.0", score("--within", "0"));
        refused("--standards goes with --fit", score("--standards", "any.yaml"));
        refused(
                "expected a label file or a folder of them",
                CommandRun.of("score", folder.resolve("none").toString(), "--against", results.toString()));
        refused(
                "expected a results folder",
                CommandRun.of(
                        "score",
                        labels.toString(),
                        "--against",
                        folder.resolve("none").toString()));
        refused(
                "cannot write",
                score("--json", folder.resolve("no/such/place.json").toString()));
        refused(
                "cannot be read",
                score("--baseline", folder.resolve("none.json").toString()));
    }

    /** Each its own line with file, field and what was expected. */
    @Test
    void refusesBadLabels() throws IOException {
        spoiled("schemaVersion", "expected version 1, found 2", "\"schemaVersion\" : 1", "\"schemaVersion\" : 2");
        spoiled("kind", "unknown kind 'skreen'; expected one of", "\"kind\" : \"screen\"", "\"kind\" : \"skreen\"");
        String digest = Digest.ofFile(folder.resolve("film0.parquet"));
        spoiled("film, sha256", "are of another film", digest, "0".repeat(64));
        String text = Files.readString(labels.resolve("film0.labels.json"));
        String late = text.replaceAll("\"(from|at|to)\" : ([0-9.]+)", "\"$1\" : 99$2");
        spoiled("events, id", "expected a time within the film's", text, late);
    }

    @Test
    void refusesTwoAnnotatorsWhoMixTheirIds() throws IOException {
        Path two = Files.createDirectory(folder.resolve("two"));
        String text = Files.readString(labels.resolve("film0.labels.json"));
        Files.writeString(two.resolve("a.labels.json"), text);
        Files.writeString(
                two.resolve("b.labels.json"),
                text.replace("scene truth", "second").replace("\"attack\"", "\"other\""));
        CommandRun run = CommandRun.of("score", two.toString(), "--against", results.toString());
        refused("people, id", run);
        assertThat(run.err()).contains("b.labels.json").contains("number people alike in both files");
    }

    private static void spoiled(String field, String expected, String good, String bad) throws IOException {
        Path file = Files.createTempDirectory(folder, "spoiled").resolve("film0.labels.json");
        String text = Files.readString(labels.resolve("film0.labels.json"));
        assertThat(text).contains(good);
        Files.writeString(file, text.replace(good, bad));
        CommandRun run = CommandRun.of("score", file.toString(), "--against", results.toString());
        refused(expected, run);
        assertThat(run.err()).contains(file.toString()).contains(field);
    }

    private static CommandRun score(String... options) {
        List<String> arguments = new ArrayList<>(List.of("score", labels.toString(), "--against", results.toString()));
        arguments.addAll(List.of(options));
        return CommandRun.of(arguments.toArray(String[]::new));
    }

    private static void refused(String words, CommandRun run) {
        assertThat(run.exitCode()).as(run.err()).isEqualTo(2);
        assertThat(run.err().lines()).as(run.err()).hasSize(1);
        assertThat(run.err()).startsWith("floorgauge: ").contains(words);
    }
}
