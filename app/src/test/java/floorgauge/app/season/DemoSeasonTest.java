package floorgauge.app.season;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.store.Films;
import floorgauge.app.store.Roster;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoSeasonTest {

    @TempDir
    private Path folder;

    @Test
    void thePlanIsEightWeeksOfTwoPractices() {
        List<Repetition.Practice> practices = SeasonPlan.practices();
        assertThat(practices).hasSize(16).isEqualTo(SeasonPlan.practices());
        Set<Long> seeds = new HashSet<>();
        practices.forEach(p -> p.repetitions().forEach(r -> seeds.add(r.seed())));
        assertThat(seeds).hasSize(16 * 8);
        assertThat(practices.get(0).day().until(practices.get(15).day()).getDays()
                        + 30
                                * practices
                                        .get(0)
                                        .day()
                                        .until(practices.get(15).day())
                                        .getMonths())
                .isBetween(49, 56);
    }

    @Test
    void theNewestPracticeHasSomethingToJudgeAndIsMarkedAsSimulated() throws Exception {
        Store store = Store.open(folder.resolve("demo.db"));
        DemoSeason season = new DemoSeason(store, folder.resolve("results"));
        season.makeNewest();
        Films films = new Films(store);
        StoredFilm film = films.newest().orElseThrow();
        assertThat(film.simulated()).isTrue();
        assertThat(films.possessions(film.id())).hasSizeGreaterThanOrEqualTo(8);
        List<StoredFinding> flags = films.findings(film.id()).stream()
                .filter(f -> f.finding().kind().isFlag())
                .toList();
        assertThat(flags).hasSizeGreaterThanOrEqualTo(5);
        assertThat(new Roster(store).players()).hasSize(12);
        byte[] first = Files.readAllBytes(film.folder().resolve("findings.json"));
        new DemoSeason(Store.open(folder.resolve("other.db")), folder.resolve("again")).makeNewest();
        assertThat(Files.readAllBytes(folder.resolve("again/practice-16/findings.json")))
                .isEqualTo(first);
    }
}
