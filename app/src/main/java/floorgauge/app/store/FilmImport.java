package floorgauge.app.store;

import floorgauge.app.result.FilmSource;
import floorgauge.app.result.FindingText;
import floorgauge.app.result.FindingsDocument;
import floorgauge.app.result.FindingsJsonReader;
import floorgauge.court.track.JerseyReading;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.RoleHolder;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/**
 * Takes a film's results folder into the store. A film that was measured anew replaces its findings; verdicts and
 * assignments stay and are matched to the new ones, see {@link Rematch}. All of it happens in one transaction.
 */
public final class FilmImport {

    private static final String FINDINGS = "findings.json";

    private final Store store;

    public FilmImport(Store store) {
        this.store = store;
    }

    /** What became of a folder. */
    public enum Outcome {
        NEW,
        MEASURED_ANEW,
        UNCHANGED
    }

    /**
     * Takes a folder.
     *
     * @throws floorgauge.court.failure.MendableException where it holds no readable results
     */
    public Outcome take(Path folder, ImportDetails details) {
        FindingsDocument read = FindingsJsonReader.read(folder.resolve(FINDINGS));
        String film = StoredFilm.idOf(read.film().sha256());
        return store.jdbi().inTransaction(handle -> {
            boolean known = handle.createQuery("SELECT COUNT(*) FROM films WHERE id = :id")
                            .bind("id", film)
                            .mapTo(Long.class)
                            .one()
                    > 0;
            boolean sameRun = Films.run(handle, film).filter(read.run()::equals).isPresent();
            if (sameRun) {
                handle.createUpdate("UPDATE films SET folder = :folder, film_path = COALESCE(:path, film_path)"
                                + " WHERE id = :id")
                        .bind("folder", folder.toAbsolutePath().toString())
                        .bind("path", details.film().map(Path::toString).orElse(null))
                        .bind("id", film)
                        .execute();
                return Outcome.UNCHANGED;
            }
            film(handle, film, folder, read, details);
            run(handle, film, read);
            tracks(handle, film, read);
            possessions(handle, film, read);
            if (known) {
                new Rematch(handle, film, folder).run();
            }
            return known ? Outcome.MEASURED_ANEW : Outcome.NEW;
        });
    }

    /** Whether a run's results hold now, and were taken from this folder. */
    public boolean holds(String run, Path folder) {
        return store.jdbi()
                        .withHandle(h -> h.createQuery("SELECT COUNT(*) FROM runs r JOIN films f ON f.id = r.film_id"
                                        + " WHERE r.id = :run AND r.holds = 1 AND f.folder = :folder")
                                .bind("run", run)
                                .bind("folder", folder.toAbsolutePath().toString())
                                .mapTo(Long.class)
                                .one())
                > 0;
    }

    private static void film(Handle handle, String id, Path folder, FindingsDocument read, ImportDetails details) {
        FilmSource film = read.film();
        handle.createUpdate("INSERT INTO films (id, sha256, name, practice_day, title, folder, film_path, width_px,"
                        + " height_px, duration_s, frames, rules, not_seen, simulated) VALUES (:id, :sha, :name, :day,"
                        + " :title, :folder, :path, :width, :height, :duration, :frames, :rules, :notSeen, :simulated)"
                        + " ON CONFLICT (id) DO UPDATE SET folder = excluded.folder,"
                        + " film_path = COALESCE(excluded.film_path, films.film_path),"
                        + " duration_s = excluded.duration_s, frames = excluded.frames, rules = excluded.rules,"
                        + " not_seen = excluded.not_seen")
                .bind("id", id)
                .bind("sha", film.sha256())
                .bind("name", film.name())
                .bind("day", details.practiceDay().toString())
                .bind("title", details.title())
                .bind("folder", folder.toAbsolutePath().toString())
                .bind("path", details.film().map(Path::toString).orElse(null))
                .bind("width", film.widthPixels())
                .bind("height", film.heightPixels())
                .bind("duration", film.durationSeconds())
                .bind("frames", film.frames())
                .bind("rules", read.court().rules().name())
                .bind("notSeen", StoreJson.notSeen(read.findings().notSeen()))
                .bind("simulated", details.simulated() ? 1 : 0)
                .execute();
        for (String table : List.of("finding_roles", "findings", "possessions", "tracks", "shots", "drawings")) {
            handle.createUpdate("DELETE FROM " + table + " WHERE film_id = :film")
                    .bind("film", id)
                    .execute();
        }
        handle.createUpdate("INSERT INTO shots (film_id, number, from_s, to_s) VALUES (:film, 1, 0, :to)")
                .bind("film", id)
                .bind("to", film.durationSeconds())
                .execute();
    }

    private static void run(Handle handle, String film, FindingsDocument read) {
        handle.createUpdate("UPDATE runs SET holds = 0 WHERE film_id = :film")
                .bind("film", film)
                .execute();
        handle.createUpdate("INSERT INTO runs (id, film_id, settings, imported_at, holds)"
                        + " VALUES (:id, :film, :settings, :at, 1)"
                        + " ON CONFLICT (id) DO UPDATE SET imported_at = excluded.imported_at, holds = 1")
                .bind("id", read.run())
                .bind("film", film)
                .bind("settings", StoreJson.write(read.settings().values()))
                .bind("at", Instant.now().toString())
                .execute();
        // A camera that moves has another court in each picture, so none is kept for the whole shot.
        boolean still = read.court().camera().equals("still");
        handle.createUpdate("INSERT INTO calibrations (run_id, shot_number, source, status, reason, pixel_to_floor)"
                        + " VALUES (:run, 1, :source, :status, :reason, :matrix) ON CONFLICT (run_id, shot_number)"
                        + " DO NOTHING")
                .bind("run", read.run())
                .bind("source", read.court().source())
                .bind("status", read.court().status())
                .bind("reason", read.court().reason())
                .bind("matrix", StoreJson.write(still ? read.court().pixelToFloor() : List.of()))
                .execute();
    }

    private static void tracks(Handle handle, String film, FindingsDocument read) {
        PreparedBatch batch = handle.prepareBatch("INSERT INTO tracks (film_id, track_id, team, team_probability,"
                + " from_s, to_s, jersey_number, jersey_probability, shirt_rgb) VALUES (:film, :track, :team,"
                + " :probability, :from, :to, :number, :read, :shirt)");
        for (FindingsDocument.PlayerSpan track : read.players()) {
            Optional<JerseyReading> jersey = track.appearance().jersey();
            OptionalInt shirt = track.appearance().shirtRgb();
            batch.bind("film", film)
                    .bind("track", track.id())
                    .bind("team", track.team().name())
                    .bind("probability", track.teamProbability())
                    .bind("from", track.fromSeconds())
                    .bind("to", track.toSeconds())
                    .bind("number", jersey.map(JerseyReading::number).orElse(null))
                    .bind("read", jersey.map(JerseyReading::probability).orElse(null))
                    .bind("shirt", shirt.isPresent() ? (Integer) shirt.getAsInt() : null)
                    .add();
        }
        if (batch.size() > 0) {
            batch.execute();
        }
    }

    private static void possessions(Handle handle, String film, FindingsDocument read) {
        PreparedBatch possessions = handle.prepareBatch("INSERT INTO possessions (id, film_id, number, from_s, to_s,"
                + " attack, attack_probability, attacked_end, ball_seen, outcome, attackers, defenders, spacing,"
                + " not_seen) VALUES (:id, :film, :number, :from, :to, :attack, :probability, :end, :ball, :outcome,"
                + " :attackers, :defenders, :spacing, :notSeen)");
        PreparedBatch findings = handle.prepareBatch("INSERT INTO findings (id, film_id, possession_id, number, kind,"
                + " flag, label, from_s, to_s, probability, level, sentence, body) VALUES (:id, :film, :possession,"
                + " :number, :kind, :flag, :label, :from, :to, :probability, :level, :sentence, :body)");
        PreparedBatch roles = handle.prepareBatch("INSERT INTO finding_roles (finding_id, position, film_id, role,"
                + " track_id) VALUES (:finding, :position, :film, :role, :track)");
        int number = 0;
        String run = read.run().substring(0, 8);
        for (PossessionFindings measured : read.findings().possessions()) {
            Possession possession = measured.possession();
            String id = film + "-" + possession.number();
            possession(possessions, film, id, measured);
            for (Finding finding : measured.findings()) {
                number++;
                finding(findings, roles, film, id, film + "-" + run + "-" + number, number, finding);
            }
        }
        for (PreparedBatch batch : List.of(possessions, findings, roles)) {
            if (batch.size() > 0) {
                batch.execute();
            }
        }
    }

    private static void possession(PreparedBatch batch, String film, String id, PossessionFindings measured) {
        Possession possession = measured.possession();
        batch.bind("id", id)
                .bind("film", film)
                .bind("number", possession.number())
                .bind("from", possession.fromSeconds())
                .bind("to", possession.toSeconds())
                .bind("attack", possession.attack().name())
                .bind("probability", possession.attackProbability())
                .bind("end", possession.end().name())
                .bind("ball", possession.ballSeen() ? 1 : 0)
                .bind("outcome", possession.outcome())
                .bind("attackers", StoreJson.write(possession.attackers()))
                .bind("defenders", StoreJson.write(possession.defenders()))
                .bind("spacing", StoreJson.spacing(measured.spacing()))
                .bind("notSeen", StoreJson.notSeen(measured.notSeen()))
                .add();
    }

    private static void finding(
            PreparedBatch findings,
            PreparedBatch roles,
            String film,
            String possession,
            String id,
            int number,
            Finding finding) {
        findings.bind("id", id)
                .bind("film", film)
                .bind("possession", possession)
                .bind("number", number)
                .bind("kind", finding.kind().name())
                .bind("flag", finding.kind().isFlag() ? 1 : 0)
                .bind("label", finding.label())
                .bind("from", finding.fromSeconds())
                .bind("to", finding.toSeconds())
                .bind("probability", finding.probability())
                .bind("level", finding.severity().map(s -> (Double) s.level()).orElse(null))
                .bind("sentence", finding.sentence())
                .bind("body", FindingText.write(finding))
                .add();
        int position = 0;
        for (RoleHolder holder : finding.roles()) {
            roles.bind("finding", id)
                    .bind("position", position++)
                    .bind("film", film)
                    .bind("role", holder.role().name())
                    .bind("track", holder.trackId())
                    .add();
        }
    }
}
