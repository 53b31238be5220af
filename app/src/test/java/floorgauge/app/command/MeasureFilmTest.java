package floorgauge.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import floorgauge.app.Main;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.TracksParquetReader;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.PlayerTrack;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.eval.tracking.MotChallengeRow;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchEvent;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The main job from film to results, with the real networks, on a second of a sample clip under an odd name. */
class MeasureFilmTest {

    private static final Path ROOT = Path.of(System.getProperty("floorgauge.root"));
    private static final Path CLIP = ROOT.resolve("sample-clips/pin-down-screen-misses.mp4");
    private static final double FROM_SECONDS = 3.8;
    private static final double TO_SECONDS = 4.8;
    private static final long MOST_MINUTES = 20;
    private static final String NAME = "- ö 'x' $(z)";
    private static final List<String> FILES = List.of(
            "ball.parquet", "detections.csv.gz", "findings.json", "sheet.html", "tracks.mot.txt", "tracks.parquet");

    @TempDir
    private static Path folder;

    private static Path film;
    private static Path undisturbed;
    private static CommandRun run;

    @BeforeAll
    static void measureOnce() throws IOException {
        film = piece(folder.resolve(NAME + ".mp4"));
        Path out = folder.resolve("undisturbed");
        run = measure(out, "--timings", "--", film.toString());
        assertThat(run.exitCode()).as(run.err()).isZero();
        undisturbed = resultsIn(out);
    }

    @Test
    void oneLineSaysWhereTheSheetIs() {
        assertThat(run.err()).isEmpty();
        assertThat(run.out().lines().findFirst().orElseThrow())
                .isEqualTo("measured " + film + ": " + undisturbed.resolve("sheet.html"));
    }

    @Test
    void timingsNameEveryStageWithTheWholeBesideNetworksAndReadingAlone() {
        assertThat(run.out())
                .containsPattern("timings of 30 frames, 1\\.0 s of film")
                .containsPattern("(?m)^film +\\d+\\.\\d s +\\d+\\.\\d frames a second$")
                .containsPattern("(?m)^detector +\\d+\\.\\d s")
                .containsPattern("(?m)^poses +\\d+\\.\\d s")
                .containsPattern("(?m)^all stages +\\d+\\.\\d s")
                .containsPattern("(?m)^networks alone +\\d+\\.\\d s")
                .containsPattern("(?m)^by the clock +\\d+\\.\\d s")
                .containsPattern("(?m)^reading alone +\\d+\\.\\d s");
    }

    @Test
    void allFilesAreThereAndNothingElse() throws IOException {
        assertThat(contents(undisturbed).keySet()).containsExactlyElementsOf(FILES);
    }

    @Test
    void theFindingsKeepTheirSchemaAndSayWhatWasMeasured() throws IOException {
        JsonNode findings = findings(undisturbed);
        assertThat(complaints(findings)).isEmpty();
        assertThat(findings.at("/film/name").asText()).isEqualTo(NAME + ".mp4");
        assertThat(findings.at("/film/frames").asInt()).isEqualTo(30);
        assertThat(findings.at("/court/source").asText()).isEqualTo("lines");
        assertThat(findings.at("/court/status").asText()).isEqualTo("good");
        assertThat(findings.at("/settings/playersPerSide").asText()).isEqualTo("found");
        assertThat(findings.at("/settings/precision").asText()).isIn("single", "bfloat16");
        assertThat(findings.at("/possessions")).isNotEmpty();
    }

    /** Against the scene's true places: whoever is tracked stands where someone is, and most of the ten are tracked. */
    @Test
    void thePlayersStandWhereTheSceneHasThem() throws IOException {
        FilmTracks tracks = TracksParquetReader.read(undisturbed.resolve("tracks.parquet"));
        MotChallengeFile truth = MotChallengeFile.read(ROOT.resolve("sample-clips/pin-down-screen-misses.mot.txt"));
        long middle = 15;
        long sceneFrame = Math.round(FROM_SECONDS * 30) + middle;
        List<FloorPoint> people = truth.rows().stream()
                .filter(row -> row.frame() == sceneFrame)
                .flatMap(row -> row.floor().stream())
                .toList();
        assertThat(people).hasSizeGreaterThanOrEqualTo(10);
        List<Double> errors = tracks.players().stream()
                .flatMap(player -> player.observations().stream())
                .filter(o -> o.frame() == middle)
                .map(o -> people.stream()
                        .mapToDouble(person -> person.distanceTo(o.foot().mean()))
                        .min()
                        .orElseThrow())
                .sorted()
                .toList();
        assertThat(errors).as("metres to the nearest person").hasSizeBetween(6, 12);
        assertThat(errors.get(errors.size() / 2)).as("median").isLessThan(0.35);
    }

    @Test
    void theMotTextHoldsTheSameTracks() {
        FilmTracks tracks = TracksParquetReader.read(undisturbed.resolve("tracks.parquet"));
        MotChallengeFile text = MotChallengeFile.read(undisturbed.resolve("tracks.mot.txt"));
        long observations = tracks.players().stream()
                .mapToLong(player -> player.observations().size())
                .sum();
        assertThat(text.rows()).hasSize((int) observations);
        assertThat(text.rows().stream().map(MotChallengeRow::id).distinct().sorted())
                .containsExactlyElementsOf(
                        tracks.players().stream().map(PlayerTrack::id).sorted().toList());
    }

    @Test
    void theSheetStandsAlone() throws IOException {
        String page = Files.readString(undisturbed.resolve("sheet.html"));
        assertThat(page).startsWith("<!DOCTYPE html>").doesNotContain("<script").doesNotContain("<link");
        Matcher references = Pattern.compile("(?:href|src)=\"([^\"]*)\"").matcher(page);
        while (references.find()) {
            assertThat(references.group(1)).matches("(?s)#.*|data:image/jpeg;base64,.*");
        }
    }

    @Test
    void aSecondRunSkipsWhatIsDone() throws IOException {
        Path out = undisturbed.getParent();
        Map<String, String> before = contents(undisturbed);
        CommandRun again = measure(out, "--", film.toString());
        assertThat(again.exitCode()).isZero();
        assertThat(again.out()).startsWith("done before ");
        assertThat(contents(undisturbed)).isEqualTo(before);
    }

    /**
     * The process is killed the moment it begins to write, in the middle of it at the latest; what it leaves is hidden, and
     * the run that follows, past a film that fails, gives the bytes of one that was never disturbed.
     */
    @Test
    void aRunThatWasKilledLeavesNothingHalfWrittenAndIsMadeUpFor() throws IOException, InterruptedException {
        Path out = Files.createDirectory(folder.resolve("killed"));
        killOnceWritingBegins(out);
        try (Stream<Path> left = Files.list(out)) {
            assertThat(left.map(p -> p.getFileName().toString())).allMatch(name -> name.startsWith("."));
        }
        Path notes = Files.writeString(folder.resolve("notes.mp4"), "Tuesday: closeouts");
        CommandRun second = measure(out, "--", notes.toString(), film.toString());
        assertThat(second.exitCode()).isEqualTo(2);
        assertThat(second.err().lines()).singleElement().asString().contains("notes.mp4");
        assertThat(second.out().lines()).singleElement().asString().startsWith("measured ");
        assertThat(contents(resultsIn(out))).isEqualTo(contents(undisturbed));
    }

    /** A cut film, and with it the court that was saved from the whole one: the camera stands where it stood. */
    @Test
    void aFilmThatWasCutOffIsMeasuredAsFarAsItGoesOnASavedCourt() throws IOException {
        byte[] whole = Files.readAllBytes(film);
        Path cut = Files.write(folder.resolve("cut.mp4"), Arrays.copyOf(whole, whole.length * 6 / 10));
        Path hall = folder.resolve("hall.yaml");
        CommandRun kept = CommandRun.of(
                "court",
                "--save",
                hall.toString(),
                "--picture",
                folder.resolve("hall.png").toString(),
                "--",
                film.toString());
        assertThat(kept.exitCode()).as(kept.err()).isZero();
        Path out = folder.resolve("cut-out");
        CommandRun measured = measure(out, "--saved", hall.toString(), "--", cut.toString());
        assertThat(measured.exitCode()).as(measured.err()).isZero();
        assertThat(measured.err().lines()).hasSize(2);
        assertThat(measured.err())
                .contains("The court saved in hall.yaml still fits: half of the floor lies within 0.0")
                .contains("breaks off at");
        JsonNode found = findings(out.resolve("cut"));
        assertThat(found.at("/film/frames").asInt()).isBetween(8, 24);
        assertThat(found.at("/court/status").asText()).isEqualTo("good");
        assertThat(found.at("/court/pixelToFloor"))
                .as("to the last digit the court of the film that it was saved from")
                .isEqualTo(findings(undisturbed).at("/court/pixelToFloor"));
        CommandRun wrong = measure(out, "--saved", cut.toString(), "--", cut.toString());
        assertThat(wrong.exitCode()).isEqualTo(2);
        assertThat(wrong.err().lines()).singleElement().asString().contains("cut.mp4");
    }

    /** The same tracks lead to the same findings; doubts about identities, which lower how sure one is, are not in the file. */
    @Test
    void tracksOfAnEarlierRunLeadToTheSameFindings() throws IOException {
        Path out = folder.resolve("from-parquet");
        CommandRun again = CommandRun.of(
                "measure",
                "--tracks",
                undisturbed.resolve("tracks.parquet").toString(),
                "--court",
                "fiba",
                "--out",
                out.toString());
        assertThat(again.exitCode()).as(again.err()).isZero();
        assertThat(again.err()).isEmpty();
        JsonNode findings = findings(out.resolve("tracks"));
        assertThat(complaints(findings)).isEmpty();
        for (String part : List.of("kind", "label", "fromSeconds", "toSeconds", "roles", "figures")) {
            assertThat(findings.get("possessions").findValues(part))
                    .as(part)
                    .isEqualTo(findings(undisturbed).get("possessions").findValues(part));
        }
        assertThat(out.resolve("tracks/sheet.html")).isNotEmptyFile();
    }

    @Test
    void motChallengeTextIsMeasuredToo() throws IOException {
        Path out = folder.resolve("from-text");
        CommandRun again = CommandRun.of(
                "measure",
                "--tracks",
                ROOT.resolve("sample-clips/pin-down-screen-misses.mot.txt").toString(),
                "--court",
                "fiba",
                "--frames-per-second",
                "30",
                "--out",
                out.toString());
        assertThat(again.exitCode()).as(again.err()).isZero();
        JsonNode findings = findings(out.resolve("pin-down-screen-misses.mot"));
        assertThat(complaints(findings)).isEmpty();
        assertThat(findings.at("/film/frames").asInt()).isBetween(235, 240);
        assertThat(findings.get("players")).hasSizeGreaterThanOrEqualTo(10);
    }

    private static CommandRun measure(Path out, String... more) {
        List<String> arguments = new ArrayList<>(List.of("measure", "--out", out.toString()));
        arguments.addAll(List.of(more));
        return CommandRun.of(arguments.toArray(new String[0]));
    }

    private static void killOnceWritingBegins(Path out) throws IOException, InterruptedException {
        try (WatchService watch = FileSystems.getDefault().newWatchService()) {
            out.register(watch, StandardWatchEventKinds.ENTRY_CREATE);
            Process process = startMeasuring(out);
            try {
                while (!writingBegan(watch.poll(MOST_MINUTES, TimeUnit.MINUTES))) {
                    assertThat(process.isAlive())
                            .as("the run ended before it wrote")
                            .isTrue();
                }
            } finally {
                process.destroyForcibly().waitFor();
            }
        }
    }

    private static boolean writingBegan(WatchKey key) {
        assertThat(key).as("the run wrote nothing for so long").isNotNull();
        boolean began = false;
        for (WatchEvent<?> event : key.pollEvents()) {
            began |= event.context().toString().endsWith(".partial");
        }
        key.reset();
        return began;
    }

    private static Process startMeasuring(Path out) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-Dai.djl.offline=true",
                "-DOPT_OUT_TRACKING=true",
                "-Djava.awt.headless=true",
                "-Dfloorgauge.models=" + System.getProperty("floorgauge.models"),
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "measure",
                "--out",
                out.toString(),
                "--",
                film.toString()));
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().put("LC_ALL", "C.UTF-8");
        return builder.redirectErrorStream(true)
                .redirectOutput(folder.resolve("killed.log").toFile())
                .start();
    }

    private static Path piece(Path into) {
        try (FilmReader reader = FilmReader.open(CLIP);
                FilmFrame frame = new FilmFrame();
                FilmWriter writer = FilmWriter.create(
                        into,
                        FilmSettings.of(reader.info().width(), reader.info().height(), 30))) {
            while (reader.read(frame) && frame.timeSeconds() < TO_SECONDS - 0.01) {
                if (frame.timeSeconds() >= FROM_SECONDS - 0.01) {
                    writer.write(frame.bgr(), frame.timeSeconds() - FROM_SECONDS);
                }
            }
        }
        return into;
    }

    private static JsonNode findings(Path results) throws IOException {
        return new ObjectMapper().readTree(results.resolve("findings.json").toFile());
    }

    private static List<String> complaints(JsonNode findings) throws IOException {
        try (InputStream schema = FindingsJson.class.getResourceAsStream("findings.schema.json")) {
            return JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(schema).validate(findings).stream()
                    .map(Object::toString)
                    .toList();
        }
    }

    /** Every file of a folder by name, its bytes as a digest. */
    private static Map<String, String> contents(Path results) throws IOException {
        Map<String, String> contents = new TreeMap<>();
        try (Stream<Path> files = Files.list(results)) {
            for (Path file : files.toList()) {
                contents.put(file.getFileName().toString(), Digest.ofFile(file));
            }
        }
        return contents;
    }

    /** The one folder of results that a run left. */
    private static Path resultsIn(Path out) throws IOException {
        try (Stream<Path> folders = Files.list(out)) {
            return folders.filter(Files::isDirectory)
                    .filter(place -> !place.getFileName().toString().startsWith("."))
                    .findFirst()
                    .orElseThrow();
        }
    }
}
