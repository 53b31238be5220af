package floorgauge.app.store;

import floorgauge.app.result.FindingText;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.track.Appearance;
import floorgauge.court.track.JerseyReading;
import floorgauge.court.track.Team;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.Possession;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Reads films and what was measured on them. Safe for use by several threads. */
public final class Films {

    private static final RowMapper<StoredFilm> FILM = (rows, context) -> film(rows);
    private static final RowMapper<StoredFinding> FINDING = (rows, context) -> findingOf(rows);

    private final Store store;

    public Films(Store store) {
        this.store = store;
    }

    /**
     * A film in a list, with how much of it was judged.
     *
     * @param film which
     * @param flags standards missed on it
     * @param judged flags and other findings that have a verdict
     */
    public record Listed(StoredFilm film, int flags, int judged) {}

    /** All films, the newest practice first. */
    public List<Listed> all() {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT f.*,"
                                + " (SELECT COUNT(*) FROM findings g WHERE g.film_id = f.id AND g.flag = 1) AS flags,"
                                + " (SELECT COUNT(DISTINCT v.subject_id) FROM verdicts v WHERE v.film_id = f.id"
                                + " AND v.taken_back = 0) AS judged FROM films f ORDER BY f.practice_day DESC, f.id")
                        .map((rows, context) -> new Listed(film(rows), rows.getInt("flags"), rows.getInt("judged")))
                        .list());
    }

    /** The film of the newest practice; empty where there is none. */
    public Optional<StoredFilm> newest() {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT * FROM films ORDER BY practice_day DESC, id LIMIT 1")
                        .map(FILM)
                        .findOne());
    }

    /** A film; empty where none has this id. */
    public Optional<StoredFilm> film(String id) {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT * FROM films WHERE id = :id")
                        .bind("id", id)
                        .map(FILM)
                        .findOne());
    }

    /** Its possessions, in order. */
    public List<StoredPossession> possessions(String filmId) {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT * FROM possessions WHERE film_id = :film ORDER BY number")
                        .bind("film", filmId)
                        .map((rows, context) -> possession(rows))
                        .list());
    }

    /** Its findings, in order. */
    public List<StoredFinding> findings(String filmId) {
        return store.jdbi()
                .withHandle(h -> h.createQuery(findingsWhere("g.film_id = :film ORDER BY g.number"))
                        .bind("film", filmId)
                        .map(FINDING)
                        .list());
    }

    /** One finding; empty where none has this id. */
    public Optional<StoredFinding> finding(String id) {
        return store.jdbi()
                .withHandle(h -> h.createQuery(findingsWhere("g.id = :id"))
                        .bind("id", id)
                        .map(FINDING)
                        .findOne());
    }

    /** What could not be measured on the whole film. */
    public List<NotSeen> notSeen(String filmId) {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT not_seen FROM films WHERE id = :film")
                        .bind("film", filmId)
                        .mapTo(String.class)
                        .findOne())
                .map(StoreJson::notSeen)
                .orElse(List.of());
    }

    /** Its tracks, in order of id, with the players they were said to be. */
    public List<StoredTrack> tracks(String filmId) {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT t.*, p.id AS player_id, p.name, p.number, p.squad, p.position,"
                                + " p.active FROM tracks t LEFT JOIN assignments a ON a.film_id = t.film_id"
                                + " AND a.track_id = t.track_id AND a.found = 1"
                                + " LEFT JOIN players p ON p.id = a.player_id"
                                + " WHERE t.film_id = :film ORDER BY t.track_id")
                        .bind("film", filmId)
                        .map((rows, context) -> track(rows))
                        .list());
    }

    /** The homography of the newest run, pixels to metres, row by row; empty where there is none. */
    public List<Double> pixelToFloor(String filmId) {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT c.pixel_to_floor FROM calibrations c JOIN runs r"
                                + " ON r.id = c.run_id WHERE r.film_id = :film AND r.holds = 1 ORDER BY c.shot_number")
                        .bind("film", filmId)
                        .mapTo(String.class)
                        .findFirst())
                .map(text -> {
                    List<Double> numbers = new java.util.ArrayList<>();
                    StoreJson.read(text).forEach(n -> numbers.add(n.asDouble()));
                    return List.copyOf(numbers);
                })
                .orElse(List.of());
    }

    /** Says where the film itself lies. */
    public void setFilm(String filmId, Optional<Path> file) {
        store.jdbi()
                .useTransaction(h -> h.createUpdate("UPDATE films SET film_path = :path WHERE id = :id")
                        .bind("path", file.map(Path::toString).orElse(null))
                        .bind("id", filmId)
                        .execute());
    }

    /** The run whose results hold; empty where none does. */
    static Optional<String> run(Handle handle, String filmId) {
        return handle.createQuery("SELECT id FROM runs WHERE film_id = :film AND holds = 1")
                .bind("film", filmId)
                .mapTo(String.class)
                .findOne();
    }

    /** A query for findings that meet a condition of this program's own. */
    static String findingsWhere(String condition) {
        return "SELECT g.id, g.film_id, g.number, g.body, p.number AS possession FROM findings g"
                + " JOIN possessions p ON p.id = g.possession_id WHERE " + condition;
    }

    static StoredFinding findingOf(ResultSet rows) throws SQLException {
        return new StoredFinding(
                rows.getString("id"),
                rows.getString("film_id"),
                rows.getInt("possession"),
                rows.getInt("number"),
                FindingText.read(rows.getString("body")));
    }

    private static StoredFilm film(ResultSet rows) throws SQLException {
        return new StoredFilm(
                rows.getString("id"),
                rows.getString("sha256"),
                rows.getString("name"),
                LocalDate.parse(rows.getString("practice_day")),
                rows.getString("title"),
                Path.of(rows.getString("folder")),
                Optional.ofNullable(rows.getString("film_path")).map(Path::of),
                rows.getInt("width_px"),
                rows.getInt("height_px"),
                rows.getDouble("duration_s"),
                rows.getLong("frames"),
                rows.getString("rules"),
                rows.getInt("simulated") != 0);
    }

    private static StoredPossession possession(ResultSet rows) throws SQLException {
        Possession possession = new Possession(
                rows.getInt("number"),
                rows.getDouble("from_s"),
                rows.getDouble("to_s"),
                Team.valueOf(rows.getString("attack")),
                rows.getDouble("attack_probability"),
                CourtEnd.valueOf(rows.getString("attacked_end")),
                StoreJson.wholes(rows.getString("attackers")),
                StoreJson.wholes(rows.getString("defenders")),
                rows.getInt("ball_seen") != 0,
                rows.getString("outcome"));
        return new StoredPossession(
                rows.getString("film_id"),
                possession,
                StoreJson.spacing(rows.getString("spacing")),
                StoreJson.notSeen(rows.getString("not_seen")));
    }

    private static StoredTrack track(ResultSet rows) throws SQLException {
        return new StoredTrack(
                rows.getInt("track_id"),
                Team.valueOf(rows.getString("team")),
                rows.getDouble("team_probability"),
                rows.getDouble("from_s"),
                rows.getDouble("to_s"),
                appearance(rows),
                rows.getString("player_id") == null ? Optional.empty() : Optional.of(Roster.player(rows, "player_id")));
    }

    static OptionalInt whole(ResultSet rows, String column) throws SQLException {
        int value = rows.getInt(column);
        return rows.wasNull() ? OptionalInt.empty() : OptionalInt.of(value);
    }

    private static Appearance appearance(ResultSet rows) throws SQLException {
        OptionalInt number = whole(rows, "jersey_number");
        double probability = rows.getDouble("jersey_probability");
        return new Appearance(
                number.isPresent() ? Optional.of(new JerseyReading(number.getAsInt(), probability)) : Optional.empty(),
                whole(rows, "shirt_rgb"));
    }
}
