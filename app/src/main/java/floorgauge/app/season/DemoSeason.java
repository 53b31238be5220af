package floorgauge.app.season;

import floorgauge.app.result.BallParquet;
import floorgauge.app.result.CourtReading;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.RunSettings;
import floorgauge.app.result.TracksParquet;
import floorgauge.app.store.FilmImport;
import floorgauge.app.store.Films;
import floorgauge.app.store.ImportDetails;
import floorgauge.app.store.Player;
import floorgauge.app.store.Roster;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredTrack;
import floorgauge.court.failure.MendableException;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FilmTracks;
import floorgauge.events.Measurement;
import floorgauge.events.finding.Findings;
import floorgauge.events.standards.Standards;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntConsumer;

/** Makes the demo season: results folders and a filled store. What is there already is not made again. */
public final class DemoSeason {

    /** On the newest practice some tracks are only read, not set, so that there is something to decide. */
    private static final int LEFT_OPEN = 3;

    private final Store store;
    private final Path folder;
    private final PracticeTracks tracks = new PracticeTracks();

    /**
     * @param store to fill
     * @param folder for the results folders, made if need be
     */
    public DemoSeason(Store store, Path folder) {
        this.store = store;
        this.folder = folder;
    }

    /** How many practices there are when it is done. */
    public static int practices() {
        return SeasonPlan.practices().size();
    }

    /** Makes the roster and the newest practice, with which the page can open. */
    public void makeNewest() {
        Roster roster = new Roster(store);
        Club.players().forEach(roster::keep);
        List<Repetition.Practice> all = SeasonPlan.practices();
        make(all.get(all.size() - 1), LEFT_OPEN);
    }

    /** Makes the others, the newest first. @param done takes the number of practices that are there */
    public void makeOthers(IntConsumer done) {
        List<Repetition.Practice> all = new ArrayList<>(SeasonPlan.practices());
        all.remove(all.size() - 1);
        Collections.reverse(all);
        int made = 1;
        done.accept(made);
        for (Repetition.Practice practice : all) {
            make(practice, 0);
            done.accept(++made);
        }
    }

    private void make(Repetition.Practice practice, int leftOpen) {
        String name = String.format(Locale.ROOT, "practice-%02d", practice.number());
        Path results = folder.resolve(name);
        if (!Files.isRegularFile(results.resolve("findings.json"))) {
            try {
                write(practice, name, results);
            } catch (IOException e) {
                throw new MendableException(
                        "cannot write " + results + " (" + e.getMessage() + "); name another folder with --season", e);
            }
        }
        FilmImport.Outcome outcome = new FilmImport(store)
                .take(
                        results,
                        new ImportDetails(
                                practice.day(),
                                "Practice " + practice.number() + ", " + practice.title(),
                                Optional.empty(),
                                true));
        if (outcome == FilmImport.Outcome.NEW) {
            assign(results, leftOpen);
        }
    }

    private void assign(Path results, int leftOpen) {
        Films films = new Films(store);
        StoredFilm film = films.all().stream()
                .map(Films.Listed::film)
                .filter(f -> f.folder().equals(results.toAbsolutePath()))
                .findFirst()
                .orElseThrow();
        Roster roster = new Roster(store);
        List<Player> players = Club.players();
        List<StoredTrack> all = films.tracks(film.id());
        for (StoredTrack track : all.subList(0, all.size() - leftOpen)) {
            roster.assign(
                    film,
                    track.trackId(),
                    Optional.of(players.get(track.trackId() - 1).id()));
        }
    }

    private void write(Repetition.Practice practice, String name, Path results) throws IOException {
        RuleSet rules = RuleSet.fiba();
        FilmTracks seen = tracks.of(practice);
        Findings findings = Measurement.measure(seen, rules, Standards.defaults());
        double last = seen.frameTimesSeconds().get(seen.frameTimesSeconds().lastKey());
        FilmSource source = new FilmSource(
                name + " (simulated)",
                Digest.ofText(Club.NAME + " " + name),
                0,
                0,
                last,
                seen.frameTimesSeconds().size());
        CourtReading court = new CourtReading(
                rules,
                "none",
                "none",
                "Simulated: played by the program, not filmed.",
                "none",
                List.of(),
                point -> Optional.empty());
        MeasuredFilm measured = new MeasuredFilm(
                source, RunSettings.of(Map.of("simulated", name, "standards", "default")), court, seen, findings);
        Files.createDirectories(results.getParent());
        Path beside = Files.createTempDirectory(results.getParent(), ".making-");
        TracksParquet.write(measured.tracks(), beside.resolve("tracks.parquet"));
        BallParquet.write(seen.ball().orElseThrow(), beside.resolve(BallParquet.FILE));
        FindingsJson.write(measured, beside.resolve("findings.json"));
        move(beside, results);
    }

    private static void move(Path beside, Path results) {
        try {
            Files.createDirectories(results);
            for (String file : List.of("tracks.parquet", BallParquet.FILE, "findings.json")) {
                Files.move(
                        beside.resolve(file), results.resolve(file), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
            }
            Files.delete(beside);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
