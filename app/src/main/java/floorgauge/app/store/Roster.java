package floorgauge.app.store;

import floorgauge.app.result.TracksWindow;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The team's players, and which track of a film each of them is. Safe for use by several threads. */
public final class Roster {

    private final Store store;

    public Roster(Store store) {
        this.store = store;
    }

    /** Everyone, in order of squad, number and name. */
    public List<Player> players() {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT * FROM players ORDER BY squad, number, name, id")
                        .map((rows, context) -> player(rows, "id"))
                        .list());
    }

    /** A player; empty where none has this id. */
    public Optional<Player> player(String id) {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT * FROM players WHERE id = :id")
                        .bind("id", id)
                        .map((rows, context) -> player(rows, "id"))
                        .findOne());
    }

    /** Adds or changes a player. */
    public void keep(Player player) {
        store.jdbi()
                .useTransaction(h -> h.createUpdate("INSERT INTO players (id, name, number, squad, position, active)"
                                + " VALUES (:id, :name, :number, :squad, :position, :active)"
                                + " ON CONFLICT (id) DO UPDATE SET name = excluded.name, number = excluded.number,"
                                + " squad = excluded.squad, position = excluded.position, active = excluded.active")
                        .bind("id", player.id())
                        .bind("name", player.name())
                        .bind(
                                "number",
                                player.number().isPresent()
                                        ? (Integer) player.number().getAsInt()
                                        : null)
                        .bind("squad", player.squad())
                        .bind("position", player.position())
                        .bind("active", player.active() ? 1 : 0)
                        .execute());
    }

    /**
     * Says who a track is, for the whole film; an empty player takes it back.
     *
     * @throws IllegalArgumentException where there is no such track or player
     */
    public void assign(StoredFilm film, int trackId, Optional<String> playerId) {
        String places = playerId.isPresent() ? places(film, trackId) : "[]";
        store.jdbi().useTransaction(h -> {
            long tracks = h.createQuery("SELECT COUNT(*) FROM tracks WHERE film_id = :film AND track_id = :track")
                    .bind("film", film.id())
                    .bind("track", trackId)
                    .mapTo(Long.class)
                    .one();
            if (tracks == 0) {
                throw new IllegalArgumentException("no track " + trackId + " on this film");
            }
            h.createUpdate("DELETE FROM assignments WHERE film_id = :film AND track_id = :track")
                    .bind("film", film.id())
                    .bind("track", trackId)
                    .execute();
            h.createUpdate("DELETE FROM drawings WHERE film_id = :film")
                    .bind("film", film.id())
                    .execute();
            if (playerId.isPresent()) {
                long players = h.createQuery("SELECT COUNT(*) FROM players WHERE id = :id")
                        .bind("id", playerId.get())
                        .mapTo(Long.class)
                        .one();
                if (players == 0) {
                    throw new IllegalArgumentException("no such player");
                }
                h.createUpdate("INSERT INTO assignments (film_id, track_id, player_id, places, found)"
                                + " VALUES (:film, :track, :player, :places, 1)")
                        .bind("film", film.id())
                        .bind("track", trackId)
                        .bind("player", playerId.get())
                        .bind("places", places)
                        .execute();
            }
        });
    }

    private static String places(StoredFilm film, int trackId) {
        FloorPlaces all = FilmPlaces.read(TracksWindow.all(film.folder().resolve(FilmPlaces.FILE)));
        return StoreJson.places(Map.of(trackId, all.some(trackId, -1e9, 1e9)));
    }

    /** Assignments whose track was not found again after the film was measured anew. */
    public List<Player> lost(String filmId) {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT p.* FROM assignments a JOIN players p ON p.id = a.player_id"
                                + " WHERE a.film_id = :film AND a.found = 0 ORDER BY p.number, p.name")
                        .bind("film", filmId)
                        .map((rows, context) -> player(rows, "id"))
                        .list());
    }

    static Player player(ResultSet rows, String idColumn) throws SQLException {
        return new Player(
                rows.getString(idColumn),
                rows.getString("name"),
                Films.whole(rows, "number"),
                rows.getString("squad"),
                rows.getString("position"),
                rows.getInt("active") != 0);
    }
}
