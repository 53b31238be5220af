package floorgauge.eval.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.failure.MendableException;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.sampleclips.labels.LabelledPerson;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScoreReportTest {

    private static final Offset<Double> EXACT = Offset.offset(1e-9);

    @TempDir
    private Path folder;

    private ScoreFixture fixture;

    @BeforeEach
    void makeFolders() throws IOException {
        fixture = new ScoreFixture(folder);
    }

    @Test
    void aFilmWithoutLabelsOrFindings() throws IOException {
        fixture.label("f", 0, "a", List.of(), List.of());
        fixture.result("f", 0, List.of());
        ScoreReport report = report();
        assertThat(value(report, "events, all", "F1")).isNaN();
        assertThat(report.errors()).isEmpty();
        assertThat(ScoreText.of(report)).contains("1 film scored.").contains("0 errors.");
        assertThat(ScorePage.of(report, "")).contains("not defined");
        assertThat(ScoreJson.of(report)).contains("\"value\" : null");
    }

    @Test
    void countsFiguresAndTracksByHand() throws IOException {
        fixture.fourFilms();
        ScoreReport report = report();
        // Of three labelled two are found, of three found two are labelled.
        assertThat(value(report, "event, screen", "precision")).isCloseTo(2.0 / 3, EXACT);
        assertThat(value(report, "event, screen", "recall")).isCloseTo(2.0 / 3, EXACT);
        assertThat(value(report, "event, screen", "F1")).isCloseTo(2.0 / 3, EXACT);
        // One false in 20 s is 180 an hour.
        assertThat(value(report, "event, screen", "false per hour")).isCloseTo(180, EXACT);
        assertThat(value(report, "events, all", "false per hour")).isCloseTo(180, EXACT);
        assertThat(value(report, "event, screen", "onset error, mean size")).isCloseTo(0.05, EXACT);
        assertThat(value(report, "event, screen", "gap, mean size of error")).isCloseTo(0.075, EXACT);
        assertThat(value(report, "event, screen", "gap, bias")).isCloseTo(-0.025, EXACT);
        assertThat(value(report, "event, screen", "roles right")).isEqualTo(1);
        assertThat(value(report, "event, screen", "name right")).isEqualTo(1);
        // Tracks are right in 90 of 100 frames.
        assertThat(value(report, "tracks", "MOTA")).isCloseTo(0.9, EXACT);
        assertThat(value(report, "tracks", "recall")).isCloseTo(0.9, EXACT);
        assertThat(value(report, "tracks", "IDF1")).isCloseTo(180.0 / 190, EXACT);
        assertThat(value(report, "tracks", "floor error, mean")).isCloseTo(0, EXACT);
        assertThat(value(report, "tracks by condition", "recall, height 40 to 80 px"))
                .isCloseTo(0.9, EXACT);
        assertThat(value(report, "tracks by condition", "recall, height 80 to 160 px"))
                .isCloseTo(0.9, EXACT);
        assertThat(value(report, "tracks by condition", "recall, covered below a quarter"))
                .isCloseTo(0.9, EXACT);
        assertThat(report.grades().graded()).isEqualTo(8);
    }

    @Test
    void everyErrorIsARowThatOpens() throws IOException {
        fixture.fourFilms();
        List<ErrorRow> first = report().films().get(0).errors();
        assertThat(first)
                .extracting(ErrorRow::problem)
                .containsExactlyInAnyOrder("figure off", "figure off", "figure off", "missed", "false", "lost", "lost");
        ErrorRow wrong = first.stream()
                .filter(e -> e.problem().equals("false"))
                .findFirst()
                .orElseThrow();
        assertThat(wrong)
                .isEqualTo(new ErrorRow(
                        "film0.mp4",
                        17,
                        "screen",
                        "false",
                        "finding-3",
                        "-",
                        "down screen (screener 11, user 12)",
                        "film0/sheet.html#finding-3"));
        ErrorRow missed = first.stream()
                .filter(e -> e.problem().equals("missed"))
                .findFirst()
                .orElseThrow();
        assertThat(missed.link()).isEqualTo("film0/sheet.html#possession-1");
        assertThat(missed.expected()).isEqualTo("down screen (screener 1, user 2)");
        ErrorRow lost = first.stream()
                .filter(e -> e.problem().equals("lost"))
                .findFirst()
                .orElseThrow();
        // After the possession's end only the head of the sheet is left.
        assertThat(lost.link()).isEqualTo("film0/sheet.html");
        assertThat(lost.timeSeconds()).isCloseTo(18, EXACT);
        assertThat(lost.expected()).isEqualTo("a track for 1.80 s, 10 frames");
    }

    @Test
    void writesScreenJsonCsvAndPage() throws IOException {
        fixture.fourFilms();
        ScoreReport report = report();
        assertThat(ScoreText.of(report)).contains("4 films scored.").contains("28 errors; the first 5:");
        JsonNode json = new ObjectMapper().readTree(ScoreJson.of(report));
        assertThat(json.path("format").asText()).isEqualTo("floorgauge-scores");
        assertThat(json.path("errors")).hasSize(28);
        assertThat(json.path("films")).hasSize(4);
        assertThat(json.path("curves").get(0).path("kind").asText()).isEqualTo("screen");
        assertThat(json.path("breakdowns")).isNotEmpty();
        assertThat(ScoreCsv.table(report))
                .startsWith("group,measure,unit,result,low,high,films,second annotator,blind");
        assertThat(ScoreCsv.errors(report)).contains("\"down screen (screener 11, user 12)\"");
        assertThat(ScoreCsv.errors(report).lines()).hasSize(29);
        String page = ScorePage.of(report, "");
        assertThat(page).contains("<svg").contains("film0/sheet.html#finding-3").contains("By condition");
        assertThat(ScoreJson.of(report())).isEqualTo(ScoreJson.of(report));
        assertThat(ScorePage.of(report(), "")).isEqualTo(page);
    }

    /** By hand: the fixture has two rule sets, two scenarios of two films each, and one film from a moving camera. */
    @Test
    void breaksDownByCondition() throws IOException {
        fixture.fourFilms();
        List<Breakdown> rows = report().breakdowns();
        Measure f1 = Measure.share("events, all", "F1");
        assertThat(rows.stream()
                        .filter(r -> r.measure().equals(f1))
                        .map(r -> r.condition() + " " + r.value() + " "
                                + r.result().clips()))
                .containsExactly(
                        "camera moving 1",
                        "camera still 3",
                        "rules fiba 2",
                        "rules nfhs 2",
                        "scenario floppy-sound 2",
                        "scenario pin-down-sound 2");
        assertThat(rows.stream().filter(r -> r.measure().equals(f1)))
                .allMatch(r -> Math.abs(r.result().value() - 2.0 / 3) < 1e-9);
        assertThat(rows.get(0).result().interval().known()).isFalse();
        assertThat(rows.get(rows.size() - 1).result().interval().known()).isTrue();
    }

    @Test
    void theBlindGuesserIsTheFloor() throws IOException {
        fixture.fourFilms();
        TableRow row = row(report(), "event, screen", "recall");
        // Guesses at 3.33, 10 and 16.67 s: the first is within a second of the label at 3 s.
        assertThat(row.floor().orElseThrow().value()).isCloseTo(1.0 / 3, EXACT);
        assertThat(row.ceiling()).isEmpty();
        assertThat(row(report(), "tracks", "HOTA").floor()).isEmpty();
    }

    @Test
    void aSecondAnnotatorIsTheCeiling() throws IOException {
        fixture.fourFilms();
        fixture.label(
                "film0",
                0,
                "b",
                ScoreFixture.people(),
                List.of(ScoreFixture.screen("t1", 3.2, 0.2, 4), ScoreFixture.screen("t2", 8, 0.5, 3)));
        ScoreReport report = report();
        assertThat(report.films()).hasSize(4);
        assertThat(row(report, "event, screen", "recall")
                        .ceiling()
                        .orElseThrow()
                        .value())
                .isCloseTo(2.0 / 3, EXACT);
        assertThat(report.gradeCeiling().graded()).isEqualTo(2);
    }

    @Test
    void aSingleFilmsFolderWillDo() throws IOException {
        fixture.fourFilms();
        FilmResults film =
                ResultsReader.read(fixture.results().resolve("film2")).get(0);
        assertThat(film.link()).isEqualTo("sheet.html");
        assertThat(film.findings()).hasSize(3);
    }

    @Test
    void labelsOfAnotherFilm() throws IOException {
        Path file = fixture.label("f", 5, "a", List.of(), List.of());
        fixture.result("f", 6, List.of());
        assertThatThrownBy(this::report)
                .isInstanceOf(ScoreException.class)
                .hasMessage(file + ", film, sha256: expected results of film " + ScoreFixture.digest(5)
                        + ", but the results of f.mp4 are of another film, SHA-256 " + ScoreFixture.digest(6));
        fixture.result("f", 5, List.of());
        assertThat(report().films()).hasSize(1);
    }

    @Test
    void labelsOfAFilmThatWasNotMeasured() throws IOException {
        fixture.label("f", 5, "a", List.of(), List.of());
        fixture.result("g", 6, List.of());
        assertThatThrownBy(this::report).hasMessageContaining("measure f.mp4 first");
    }

    @Test
    void aTimePastTheEnd() throws IOException {
        Path file = fixture.label("f", 0, "a", ScoreFixture.people(), List.of(ScoreFixture.screen("late", 21, 0.1, 3)));
        fixture.result("f", 0, List.of());
        assertThatThrownBy(this::report)
                .hasMessage(file + ", events, id late, from: expected a time within the film's 20.00 s, found 20.50");
    }

    /** A label may end with the last frame, but not after it. */
    @Test
    void anEventThatEndsPastTheEnd() throws IOException {
        Path file =
                fixture.label("f", 0, "a", ScoreFixture.people(), List.of(ScoreFixture.screen("end", 19.8, 0.1, 3)));
        fixture.result("f", 0, List.of());
        assertThatThrownBy(this::report)
                .hasMessage(file + ", events, id end, to: expected a time within the film's 20.00 s, found 20.30");
    }

    @Test
    void aNewerSchema() throws IOException {
        Path file = fixture.label("f", 0, "a", List.of(), List.of());
        Files.writeString(file, Files.readString(file).replace("\"schemaVersion\" : 1", "\"schemaVersion\" : 2"));
        assertThatThrownBy(this::report)
                .isInstanceOf(MendableException.class)
                .hasMessageContaining(file.toString())
                .hasMessageContaining("schemaVersion")
                .hasMessageContaining("expected version 1, found 2");
    }

    @Test
    void anUnknownKind() throws IOException {
        Path file = fixture.label("f", 0, "a", ScoreFixture.people(), List.of(ScoreFixture.screen("s", 3, 0.1, 3)));
        Files.writeString(file, Files.readString(file).replace("\"screen\",", "\"skreen\","));
        assertThatThrownBy(this::report)
                .isInstanceOf(MendableException.class)
                .hasMessageContaining(file.toString())
                .hasMessageContaining("kind")
                .hasMessageContaining("skreen");
    }

    @Test
    void twoAnnotatorsWhoMeanDifferentPeopleByOneId() throws IOException {
        Path first = fixture.label("f", 0, "a", ScoreFixture.people(), List.of());
        Path second = fixture.label(
                "f",
                0,
                "b",
                List.of(new LabelledPerson(1, LabelledPerson.Side.DEFENCE, OptionalInt.of(4), Optional.empty())),
                List.of());
        assertThatThrownBy(() -> LabelFolder.read(fixture.labels()))
                .hasMessage(second + ", people, id 1: expected the person that " + first.getFileName()
                        + " gives this id (attack number 7), found another (defence number 4); number people alike in "
                        + "both files");
    }

    @Test
    void oneAnnotatorTwice() throws IOException {
        Path first = fixture.label("f", 0, "a", List.of(), List.of());
        Files.copy(first, fixture.labels().resolve("g.labels.json"));
        assertThatThrownBy(() -> LabelFolder.read(fixture.labels())).hasMessageContaining("another annotator");
    }

    @Test
    void nothingThere() throws IOException {
        assertThatThrownBy(() -> LabelFolder.read(folder.resolve("none"))).hasMessageContaining("found nothing there");
        assertThatThrownBy(() -> LabelFolder.read(fixture.labels())).hasMessageContaining("at least one label file");
        assertThatThrownBy(() -> ResultsReader.read(folder.resolve("none")))
                .hasMessageContaining("expected a results folder");
        assertThatThrownBy(() -> ResultsReader.read(fixture.results()))
                .hasMessageContaining("findings.json, found none");
    }

    @Test
    void resultsThatAreNotResults() throws IOException {
        Path file = fixture.result("f", 0, List.of()).resolve("findings.json");
        String good = Files.readString(file);
        Files.writeString(file, good.replace("floorgauge-findings", "other"));
        assertThatThrownBy(() -> ResultsReader.read(fixture.results())).hasMessageContaining("format");
        Files.writeString(file, good.replace("\"version\":1", "\"version\":9"));
        assertThatThrownBy(() -> ResultsReader.read(fixture.results())).hasMessageContaining("expected 1, found 9");
        Files.writeString(file, good.substring(0, 40));
        assertThatThrownBy(() -> ResultsReader.read(fixture.results())).hasMessageContaining("expected JSON");
        Files.writeString(file, good.replace("\"frames\":100", "\"frames\":\"many\""));
        assertThatThrownBy(() -> ResultsReader.read(fixture.results()))
                .hasMessage(file + ", film, frames: expected a number");
        fixture.result("f", 0, List.of(ScoreFixture.finding("dunk", 3, 0, 0, 1)));
        assertThatThrownBy(() -> ResultsReader.read(fixture.results()))
                .hasMessageContaining("finding-1, kind: expected a known kind of finding, found 'dunk'");
    }

    private ScoreReport report() {
        FilmPairing pairing = FilmPairing.of(LabelFolder.read(fixture.labels()), ResultsReader.read(fixture.results()));
        return ScoreReport.of(pairing, EventTolerance.USUAL, new ClipBootstrap(200, 0.9, 1));
    }

    private static TableRow row(ScoreReport report, String group, String name) {
        return report.table().stream()
                .filter(r ->
                        r.measure().group().equals(group) && r.measure().name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no row " + group + ": " + name));
    }

    private static double value(ScoreReport report, String group, String name) {
        return row(report, group, name).result().value();
    }
}
