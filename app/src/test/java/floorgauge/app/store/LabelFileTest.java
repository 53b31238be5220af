package floorgauge.app.store;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.InventedFilm;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.TracksParquet;
import floorgauge.events.finding.FindingKind;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.LabelReader;
import floorgauge.sampleclips.labels.LabelledEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LabelFileTest {

    @TempDir
    private Path folder;

    private Store store;
    private StoredFilm film;
    private List<StoredFinding> findings;

    @BeforeEach
    void take() throws IOException {
        MeasuredFilm measured = InventedFilm.measured();
        Path results = Files.createDirectories(folder.resolve("results"));
        TracksParquet.write(measured.tracks(), results.resolve("tracks.parquet"));
        FindingsJson.write(measured, results.resolve("findings.json"));
        store = Store.open(folder.resolve("season.db"));
        new FilmImport(store)
                .take(results, new ImportDetails(LocalDate.of(2026, 3, 2), "Monday", Optional.empty(), false));
        film = new Films(store).newest().orElseThrow();
        findings = new Films(store).findings(film.id());
    }

    @Test
    void withoutAVerdictNothingCountsAndEveryPossessionIsUnclear() {
        FilmLabels labels = new LabelFile(store).labels(film, "assistant coach");
        assertThat(labels.events()).hasSize(2).allMatch(e -> e.cantTell().contains(LabelledEvent.EXISTENCE));
        assertThat(labels.unclear()).hasSize(1);
    }

    @Test
    void rightStandsAsCorrectedAndWrongIsLeftOut() {
        Verdicts verdicts = new Verdicts(store);
        StoredFinding screen = findings.get(0);
        verdicts.judge(
                film,
                screen,
                new Verdict(
                        "a",
                        screen.id(),
                        film.id(),
                        Verdict.Answer.RIGHT,
                        FindingKind.MOVING_SCREEN,
                        "flare screen",
                        1.5,
                        4.0,
                        screen.finding().roles(),
                        OptionalInt.of(2),
                        "slides into him",
                        "assistant coach"));
        verdicts.judge(film, findings.get(1), StoreTest.verdict("b", findings.get(1), Verdict.Answer.WRONG));
        FilmLabels labels = LabelReader.read("labels", new LabelFile(store).write(film, "assistant coach"));
        assertThat(labels.events()).hasSize(1);
        LabelledEvent event = labels.events().get(0);
        assertThat(event.kind()).isEqualTo(FindingKind.MOVING_SCREEN);
        assertThat(event.label()).contains("flare screen");
        assertThat(event.fromSeconds()).isEqualTo(1.5);
        assertThat(event.grade()).hasValue(2);
        assertThat(event.note()).contains("slides into him");
        assertThat(event.cantTell()).isEmpty();
        assertThat(labels.unclear()).isEmpty();
        assertThat(labels.film().orElseThrow().sha256()).isEqualTo(film.sha256());
    }

    @Test
    void whatWasEnteredByHandIsAnEventAndWhatCannotBeToldCountsNeitherWay() {
        Verdicts verdicts = new Verdicts(store);
        verdicts.judge(film, findings.get(0), StoreTest.verdict("a", findings.get(0), Verdict.Answer.CANT_TELL));
        verdicts.enter(
                film,
                new Verdict(
                        "b",
                        "hand-1",
                        film.id(),
                        Verdict.Answer.RIGHT,
                        FindingKind.LATE_CUT,
                        "",
                        5,
                        5.5,
                        List.of(),
                        OptionalInt.empty(),
                        "",
                        "assistant coach"));
        List<LabelledEvent> events =
                new LabelFile(store).labels(film, "assistant coach").events();
        assertThat(events).hasSize(3);
        assertThat(events.get(0).cantTell()).containsExactly(LabelledEvent.EXISTENCE);
        assertThat(events.stream().filter(e -> e.kind() == FindingKind.LATE_CUT))
                .hasSize(1)
                .allMatch(e -> e.cantTell().isEmpty());
    }
}
