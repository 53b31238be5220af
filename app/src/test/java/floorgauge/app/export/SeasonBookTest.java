package floorgauge.app.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.app.store.FilmImport;
import floorgauge.app.store.Films;
import floorgauge.app.store.ImportDetails;
import floorgauge.app.store.Player;
import floorgauge.app.store.Roster;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.Verdict;
import floorgauge.app.store.Verdicts;
import floorgauge.court.failure.MendableException;
import floorgauge.events.finding.Finding;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SeasonBookTest {

    @TempDir
    private Path folder;

    @Test
    void aSeasonWithoutAStoreIsSaidInOneLine() {
        assertThat(SeasonBook.in(folder)).isEmpty();
        assertThatThrownBy(() -> SeasonBook.require(folder))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("--season");
    }

    @Test
    void whatWasSaidOnTheReviewPageIsRead() throws IOException {
        Path results = ExportedFilms.results(folder, "film");
        Store store = Store.open(folder.resolve("season/season.db"));
        new FilmImport(store)
                .take(results, new ImportDetails(LocalDate.of(2026, 1, 5), "Monday", Optional.empty(), false));
        StoredFilm film = new Films(store).all().get(0).film();
        StoredFinding weak = new Films(store).findings(film.id()).get(0);
        new Verdicts(store).judge(film, weak, wrong(weak));
        Roster roster = new Roster(store);
        roster.keep(new Player("okoro", "Dane Okoro", OptionalInt.of(9), "", "", true));
        roster.assign(film, 2, Optional.of("okoro"));

        SeasonBook book = SeasonBook.require(folder.resolve("season"));
        MeasuredFolder measured = MeasuredFolder.at(List.of(results)).get(0);
        List<ChosenFinding> findings =
                FilmChoice.of(measured, (f, finding) -> true).findings();
        assertThat(book.answer(measured, findings.get(0))).contains(Verdict.Answer.WRONG);
        assertThat(book.answer(measured, findings.get(1))).isEmpty();
        assertThat(book.nameOf(measured.findings().film().sha256(), 2).orElseThrow())
                .contains("Dane Okoro");
        assertThat(book.nameOf(measured.findings().film().sha256(), 3)).isEmpty();
        assertThat(book.nameOf("f".repeat(64), 2)).isEmpty();
    }

    private static Verdict wrong(StoredFinding found) {
        Finding finding = found.finding();
        return new Verdict(
                "v1",
                found.id(),
                found.filmId(),
                Verdict.Answer.WRONG,
                finding.kind(),
                finding.label(),
                finding.fromSeconds(),
                finding.toSeconds(),
                finding.roles(),
                OptionalInt.empty(),
                "",
                "assistant coach");
    }
}
