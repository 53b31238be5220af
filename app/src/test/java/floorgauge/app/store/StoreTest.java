package floorgauge.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.app.InventedFilm;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.RunSettings;
import floorgauge.app.result.TracksParquet;
import floorgauge.court.failure.MendableException;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.PlayerTrack;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Everything runs on SQLite, and again on PostgreSQL where Debian's server is installed. */
class StoreTest {

    @TempDir
    private Path folder;

    static List<TestStores> stores() {
        return TestStores.all();
    }

    @Test
    void refusesWhatIsNoStore() throws IOException {
        Path text = Files.writeString(folder.resolve("notes.txt"), "these are notes, long enough to have a header");
        assertThatThrownBy(() -> Store.open(text))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("notes.txt")
                .hasMessageContaining("name another");
        assertThatThrownBy(() -> Store.open("jdbc:other:thing")).hasMessageContaining("jdbc:postgresql:");
    }

    @Test
    void refusesTheStoreOfANewerVersion() {
        Path file = folder.resolve("season.db");
        Store store = Store.open(file);
        store.jdbi()
                .useHandle(
                        h -> h.execute("INSERT INTO schema_history (installed_rank, version, description, type, script,"
                                + " checksum, installed_by, execution_time, success) VALUES (99, '900', 'later', 'SQL',"
                                + " 'V900__later.sql', 1, '', 0, 1)"));
        assertThatThrownBy(() -> Store.open(file))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("newer version")
                .hasMessageContaining("season.db");
    }

    @Test
    void aBackupHoldsEverythingAndIsNeverWrittenOver() {
        Store store = Store.open(folder.resolve("season.db"));
        store.keep("word", "kept");
        Path backup = folder.resolve("backups/monday.db");
        store.backUp(backup);
        assertThat(Store.open(backup).setting("word")).contains("kept");
        assertThatThrownBy(() -> store.backUp(backup))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("already");
    }

    @ParameterizedTest
    @MethodSource("stores")
    void anEmptyStoreHoldsNothing(TestStores kind) {
        try (TestStores.Opened opened = kind.open(folder)) {
            Films films = new Films(opened.store());
            assertThat(opened.store().isEmpty()).isTrue();
            assertThat(films.newest()).isEmpty();
            assertThat(films.all()).isEmpty();
            assertThat(films.film("none")).isEmpty();
            assertThat(new Verdicts(opened.store()).takeBack("none")).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("stores")
    void aResultsFolderComesBackAsItWas(TestStores kind) throws IOException {
        try (TestStores.Opened opened = kind.open(folder)) {
            MeasuredFilm measured = InventedFilm.measured();
            take(opened.store(), measured);
            Films films = new Films(opened.store());
            StoredFilm film = films.newest().orElseThrow();
            assertThat(film.name()).isEqualTo(measured.film().name());
            assertThat(films.findings(film.id()).stream().map(StoredFinding::finding))
                    .isEqualTo(measured.findings().all());
            assertThat(films.possessions(film.id()).get(0).possession())
                    .isEqualTo(measured.findings().possessions().get(0).possession());
            assertThat(films.possessions(film.id()).get(0).spacing())
                    .hasSameSizeAs(measured.findings().possessions().get(0).spacing());
            assertThat(films.tracks(film.id()))
                    .hasSize(6)
                    .allMatch(t -> t.player().isEmpty());
            assertThat(new FilmImport(opened.store()).take(written(measured), details()))
                    .isEqualTo(FilmImport.Outcome.UNCHANGED);
        }
    }

    @ParameterizedTest
    @MethodSource("stores")
    void theLastVerdictHoldsAndCanBeTakenBack(TestStores kind) throws IOException {
        try (TestStores.Opened opened = kind.open(folder)) {
            take(opened.store(), InventedFilm.measured());
            StoredFilm film = new Films(opened.store()).newest().orElseThrow();
            StoredFinding finding =
                    new Films(opened.store()).findings(film.id()).get(0);
            Verdicts verdicts = new Verdicts(opened.store());
            verdicts.judge(film, finding, verdict("a", finding, Verdict.Answer.RIGHT));
            verdicts.judge(film, finding, verdict("b", finding, Verdict.Answer.WRONG));
            verdicts.judge(film, finding, verdict("b", finding, Verdict.Answer.WRONG));
            assertThat(verdicts.given()).isEqualTo(2);
            assertThat(answer(verdicts, finding)).contains(Verdict.Answer.WRONG);
            assertThat(verdicts.takeBack(film.id())).isPresent();
            assertThat(answer(verdicts, finding)).contains(Verdict.Answer.RIGHT);
            assertThat(verdicts.takeBack(film.id())).isPresent();
            assertThat(answer(verdicts, finding)).isEmpty();
            assertThat(verdicts.takeBack(film.id())).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("stores")
    void whatWasTakenBackComesBackInTurnUntilAnotherIsGiven(TestStores kind) throws IOException {
        try (TestStores.Opened opened = kind.open(folder)) {
            take(opened.store(), InventedFilm.measured());
            StoredFilm film = new Films(opened.store()).newest().orElseThrow();
            StoredFinding finding =
                    new Films(opened.store()).findings(film.id()).get(0);
            Verdicts verdicts = new Verdicts(opened.store());
            assertThat(verdicts.giveBack(film.id())).isEmpty();
            verdicts.judge(film, finding, verdict("a", finding, Verdict.Answer.RIGHT));
            assertThat(verdicts.giveBack(film.id())).isEmpty();
            verdicts.judge(film, finding, verdict("b", finding, Verdict.Answer.WRONG));
            verdicts.takeBack(film.id());
            verdicts.takeBack(film.id());
            assertThat(answer(verdicts, finding)).isEmpty();
            verdicts.giveBack(film.id());
            assertThat(answer(verdicts, finding)).contains(Verdict.Answer.RIGHT);
            verdicts.giveBack(film.id());
            assertThat(answer(verdicts, finding)).contains(Verdict.Answer.WRONG);
            assertThat(verdicts.giveBack(film.id())).isEmpty();
            verdicts.takeBack(film.id());
            verdicts.judge(film, finding, verdict("c", finding, Verdict.Answer.CANT_TELL));
            assertThat(verdicts.giveBack(film.id()))
                    .as("another was given since")
                    .isEmpty();
            assertThat(answer(verdicts, finding)).contains(Verdict.Answer.CANT_TELL);
        }
    }

    @ParameterizedTest
    @MethodSource("stores")
    void verdictsAndPlayersSurviveMeasuringAnewWithOtherTrackIds(TestStores kind) throws IOException {
        try (TestStores.Opened opened = kind.open(folder)) {
            MeasuredFilm first = InventedFilm.measured();
            take(opened.store(), first);
            Films films = new Films(opened.store());
            StoredFilm film = films.newest().orElseThrow();
            Verdicts verdicts = new Verdicts(opened.store());
            Roster roster = new Roster(opened.store());
            roster.keep(new Player("p", "Noor Hadley", OptionalInt.of(12), "light", "centre", true));
            roster.assign(film, 2, Optional.of("p"));
            for (StoredFinding finding : films.findings(film.id())) {
                verdicts.judge(film, finding, verdict("v" + finding.number(), finding, Verdict.Answer.RIGHT));
            }
            take(opened.store(), renumbered(first, 0.15));
            assertThat(films.findings(film.id())).hasSize(1);
            StoredFinding screen = films.findings(film.id()).get(0);
            Subject matched = verdicts.ofFinding(screen.id()).orElseThrow();
            assertThat(matched.roles())
                    .contains(new RoleHolder(Role.SCREENER, 12), new RoleHolder(Role.USER_DEFENDER, 14));
            assertThat(matched.verdict().orElseThrow().roles()).contains(new RoleHolder(Role.SCREENER, 12));
            assertThat(films.tracks(film.id()).stream()
                            .filter(t -> t.player().isPresent())
                            .map(StoredTrack::trackId))
                    .containsExactly(12);
            List<Subject> kept = verdicts.ofFilm(film.id()).stream()
                    .filter(s -> s.findingId().isEmpty())
                    .toList();
            assertThat(kept).extracting(Subject::kind).containsExactly(FindingKind.CROWDED_FLOOR);
            assertThat(roster.lost(film.id())).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("stores")
    void aNoteIsKeptInPlaceOfTheOneBefore(TestStores kind) {
        try (TestStores.Opened opened = kind.open(folder)) {
            Notes notes = new Notes(opened.store());
            assertThat(notes.ofFilm("f")).isEmpty();
            notes.keep("f", "first");
            notes.keep("f", " second ");
            assertThat(notes.ofFilm("f")).contains("second");
            notes.keep("f", " ");
            assertThat(notes.ofFilm("f")).isEmpty();
            assertThatThrownBy(() -> notes.keep("f", "n".repeat(Notes.LONGEST + 1)))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    private static Optional<Verdict.Answer> answer(Verdicts verdicts, StoredFinding finding) {
        return verdicts.ofFinding(finding.id()).flatMap(Subject::verdict).map(Verdict::answer);
    }

    static Verdict verdict(String id, StoredFinding found, Verdict.Answer answer) {
        Finding finding = found.finding();
        return new Verdict(
                id,
                found.id(),
                found.filmId(),
                answer,
                finding.kind(),
                finding.label(),
                finding.fromSeconds(),
                finding.toSeconds(),
                finding.roles(),
                OptionalInt.empty(),
                "",
                "assistant coach");
    }

    private void take(Store store, MeasuredFilm measured) throws IOException {
        new FilmImport(store).take(written(measured), details());
    }

    private static ImportDetails details() {
        return new ImportDetails(LocalDate.of(2026, 3, 2), "Monday", Optional.empty(), false);
    }

    private Path written(MeasuredFilm measured) throws IOException {
        Path results = Files.createDirectories(
                folder.resolve(measured.settings().keyFor(measured.film().sha256())));
        TracksParquet.write(measured.tracks(), results.resolve("tracks.parquet"));
        FindingsJson.write(measured, results.resolve("findings.json"));
        return results;
    }

    /** The same film measured anew: everyone's id is ten higher, the screen lies a little later, the crowd is not found. */
    private static MeasuredFilm renumbered(MeasuredFilm film, double shift) {
        List<PlayerTrack> tracks = film.tracks().players().stream()
                .map(t -> new PlayerTrack(t.id() + 10, t.team(), t.teamProbability(), t.observations(), List.of()))
                .toList();
        PossessionFindings old = film.findings().possessions().get(0);
        Finding screen = old.findings().get(0);
        Finding moved = new Finding(
                screen.kind(),
                screen.label(),
                screen.fromSeconds() + shift,
                screen.toSeconds() + shift,
                screen.roles().stream()
                        .map(r -> new RoleHolder(r.role(), r.trackId() + 10))
                        .toList(),
                screen.figures(),
                screen.probability(),
                screen.severity(),
                screen.sentence(),
                screen.frames(),
                screen.ticks(),
                List.of(),
                screen.notSeen());
        PossessionFindings possession =
                new PossessionFindings(old.possession(), List.of(moved), old.spacing(), List.of(), old.notSeen());
        return new MeasuredFilm(
                film.film(),
                RunSettings.of(Map.of("standards", "stricter")),
                film.court(),
                new FilmTracks(film.tracks().frameTimesSeconds(), tracks, Optional.empty()),
                new Findings(List.of(possession), List.of()));
    }
}
