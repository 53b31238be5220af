package floorgauge.eval.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.eval.statistics.ClipBootstrap;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ComparisonTest {

    private static final Measure RECALL = Measure.share("event, screen", "recall");
    private static final Measure ERROR = Measure.error("event, screen", "gap, mean size of error", "");
    private static final Measure BIAS = new Measure("event, screen", "gap, bias", "", Measure.Better.NEITHER);

    @TempDir
    private Path folder;

    @Test
    void nothingAgainstNothing() {
        RunSummary none = new RunSummary(List.of(), List.of());
        Comparison comparison = Comparison.of(none, none, ClipBootstrap.usual());
        assertThat(comparison.lines()).isEmpty();
        assertThat(comparison.inWords()).isEqualTo("nothing changed beyond noise\n");
    }

    @Test
    void theSameRunTwice() {
        RunSummary run = run(8, 5, List.of());
        Comparison comparison = Comparison.of(run, run, ClipBootstrap.usual());
        assertThat(comparison.worse()).isEmpty();
        assertThat(comparison.lines()).allMatch(l -> l.verdict() == Comparison.Verdict.WITHIN_NOISE);
    }

    @Test
    void aLossOnEveryFilmIsWorseAndItsRowsAreNamed() {
        ErrorRow known = row(3.2, "missed", "finding-2");
        ErrorRow sameAgain = row(3.1, "missed", "finding-9");
        ErrorRow fresh = row(7, "missed", "-");
        Comparison comparison =
                Comparison.of(run(8, 5, List.of(known)), run(6, 7, List.of(sameAgain, fresh)), ClipBootstrap.usual());
        assertThat(comparison.worse()).extracting(Comparison.Line::measure).containsExactly(ERROR, RECALL);
        assertThat(comparison.appeared()).containsExactly(fresh);
        assertThat(comparison.gone()).isEmpty();
        assertThat(comparison.inWords())
                .contains("worse   event, screen: recall: 0.778 to 0.578")
                .contains("new     f 7.00 s, screen, missed: expected x, came y");
    }

    @Test
    void aGainIsBetterAndABiasIsNeither() {
        Comparison comparison = Comparison.of(run(6, 7, List.of()), run(8, 5, List.of()), ClipBootstrap.usual());
        assertThat(comparison.lines())
                .filteredOn(l -> l.verdict() == Comparison.Verdict.BETTER)
                .hasSize(2);
        assertThat(comparison.lines())
                .filteredOn(l -> l.measure().equals(BIAS))
                .allMatch(l -> l.verdict() == Comparison.Verdict.WITHIN_NOISE);
        assertThat(comparison.inWords()).contains("better  event, screen: recall");
    }

    @Test
    void filmsOfOneRunAloneAreLeftOut() {
        RunSummary all = run(8, 5, List.of());
        RunSummary one = new RunSummary(all.films().subList(0, 1), List.of());
        assertThat(Comparison.of(all, one, ClipBootstrap.usual())
                        .lines()
                        .get(0)
                        .difference()
                        .clips())
                .isEqualTo(1);
    }

    @Test
    void aBaselineReadsBackAsItWasWritten() throws IOException {
        RunSummary run = run(8, 5, List.of(row(3, "missed", "-")));
        Path file = Files.writeString(folder.resolve("baseline.json"), run.json());
        assertThat(RunSummary.read(file)).isEqualTo(run);
    }

    /** Thirds have no end as decimals: a rounded baseline would seem to differ from the same run in every film. */
    @Test
    void aBaselineKeepsSumsExact() throws IOException {
        TreeMap<Measure, Sum> sums = new TreeMap<>();
        sums.put(ERROR, new Sum(1 / 3.0, 1));
        RunSummary run = new RunSummary(List.of(new FilmSums("a", sums), new FilmSums("b", sums)), List.of());
        RunSummary read = RunSummary.read(Files.writeString(folder.resolve("baseline.json"), run.json()));
        assertThat(read).isEqualTo(run);
        assertThat(Comparison.of(read, run, ClipBootstrap.usual()).lines())
                .allMatch(l -> l.verdict() == Comparison.Verdict.WITHIN_NOISE);
    }

    @Test
    void refusesWhatIsNoBaseline() throws IOException {
        Path file = folder.resolve("baseline.json");
        assertThatThrownBy(() -> RunSummary.read(file)).hasMessageContaining("cannot be read");
        Files.writeString(file, "{");
        assertThatThrownBy(() -> RunSummary.read(file)).hasMessageContaining("expected JSON");
        Files.writeString(file, "{}");
        assertThatThrownBy(() -> RunSummary.read(file)).hasMessage(file + ", format: expected floorgauge-scores");
        Files.writeString(file, "{\"format\":\"floorgauge-scores\",\"version\":7}");
        assertThatThrownBy(() -> RunSummary.read(file)).hasMessage(file + ", version: expected 1");
    }

    @Test
    void sumsThatCannotBe() {
        assertThatThrownBy(() -> new Sum(Double.NaN, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Sum(1, -1)).isInstanceOf(IllegalArgumentException.class);
        assertThat(Sum.NONE.value()).isNaN();
    }

    private static ErrorRow row(double time, String problem, String ids) {
        return new ErrorRow("f", time, "screen", problem, ids, "x", "y", "sheet.html");
    }

    /** Ten films, found of ten labelled in each, with a little change from film to film. */
    private static RunSummary run(int found, double error, List<ErrorRow> errors) {
        List<FilmSums> films = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            TreeMap<Measure, Sum> sums = new TreeMap<>();
            sums.put(RECALL, new Sum(found - i % 3 * 0.25, 10));
            sums.put(ERROR, new Sum(error + i % 3 * 0.25, 10));
            sums.put(BIAS, new Sum(error, 10));
            films.add(new FilmSums("film" + i, sums));
        }
        return new RunSummary(films, errors);
    }
}
