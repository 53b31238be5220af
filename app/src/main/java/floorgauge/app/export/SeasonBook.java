package floorgauge.app.export;

import floorgauge.app.sheet.PlayerNames;
import floorgauge.app.store.Films;
import floorgauge.app.store.Player;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.StoredTrack;
import floorgauge.app.store.Verdict;
import floorgauge.app.store.Verdicts;
import floorgauge.court.failure.MendableException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the analyst said on the review page: who the players are, and which findings are right. Reads the season's store. */
public final class SeasonBook implements PlayerNames {

    private static final List<String> STORES = List.of("season.db", "demo.db");

    /** Findings of one run start at the same moment; of two runs of a film they may not. */
    private static final double SAME_START_SECONDS = 0.05;

    private final Films films;
    private final Verdicts verdicts;
    private final Map<String, Map<Integer, String>> names = new HashMap<>();

    /** @param store the season's */
    public SeasonBook(Store store) {
        this.films = new Films(store);
        this.verdicts = new Verdicts(store);
    }

    /** The book in a season's folder; empty where nothing was judged there yet. */
    public static Optional<SeasonBook> in(Path season) {
        return STORES.stream()
                .map(season::resolve)
                .filter(Files::isRegularFile)
                .findFirst()
                .map(file -> new SeasonBook(Store.open(file)));
    }

    /** @throws MendableException where there is none */
    public static SeasonBook require(Path season) {
        return in(season)
                .orElseThrow(() -> new MendableException("nothing was judged in " + season
                        + " yet; open the results with floorgauge review, or name the season's folder with --season"));
    }

    @Override
    public Optional<String> nameOf(String filmSha256, int trackId) {
        return Optional.ofNullable(
                names.computeIfAbsent(filmSha256, this::names).get(trackId));
    }

    private Map<Integer, String> names(String filmSha256) {
        Map<Integer, String> called = new HashMap<>();
        for (StoredTrack track : films.tracks(StoredFilm.idOf(filmSha256))) {
            track.player().map(Player::called).ifPresent(name -> called.put(track.trackId(), name));
        }
        return called;
    }

    /** The verdict on a finding; empty where it was not judged, or the film was measured anew since. */
    public Optional<Verdict.Answer> answer(MeasuredFolder film, ChosenFinding finding) {
        return films.findings(StoredFilm.idOf(film.findings().film().sha256())).stream()
                .filter(stored -> isSame(stored, finding))
                .findFirst()
                .flatMap(stored -> verdicts.ofFinding(stored.id()))
                .flatMap(subject -> subject.verdict())
                .map(Verdict::answer);
    }

    private static boolean isSame(StoredFinding stored, ChosenFinding finding) {
        return stored.number() == finding.number()
                && stored.finding().kind() == finding.finding().kind()
                && Math.abs(stored.finding().fromSeconds() - finding.finding().fromSeconds()) <= SAME_START_SECONDS;
    }
}
