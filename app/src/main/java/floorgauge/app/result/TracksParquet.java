package floorgauge.app.result;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.track.Body;
import floorgauge.court.track.Facing;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerSighting;
import floorgauge.court.track.Pose;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Properties;
import java.util.stream.Collectors;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;

/**
 * Writes {@code tracks.parquet}: one row for each player in each frame, in order of frame, then of player; one row with
 * nothing but frame and time for a frame in which nobody was seen.
 */
public final class TracksParquet {

    private static final String TABLE = "tracks";

    private TracksParquet() {}

    /** Writes the file; the same tracks give the same bytes. */
    public static void write(FilmTracks tracks, Path file) throws IOException {
        try (DuckDBConnection connection = open();
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE TABLE " + TABLE + " ("
                    + TrackColumn.ALL.stream()
                            .map(c -> c.name() + " " + c.type())
                            .collect(Collectors.joining(", "))
                    + ")");
            append(connection, tracks);
            statement.execute("COPY (SELECT * FROM " + TABLE + " ORDER BY frame, player_id) TO '"
                    + file.toString().replace("'", "''") + "' (FORMAT parquet, COMPRESSION zstd)");
        } catch (SQLException e) {
            throw new IOException("cannot write " + file + ": " + e.getMessage(), e);
        }
    }

    /** A database in memory, on one thread so that rows keep their order in the file. */
    static DuckDBConnection open() throws SQLException {
        Properties properties = new Properties();
        properties.setProperty("threads", "1");
        Connection connection = DriverManager.getConnection("jdbc:duckdb:", properties);
        return connection.unwrap(DuckDBConnection.class);
    }

    private static void append(DuckDBConnection connection, FilmTracks tracks) throws SQLException {
        try (DuckDBAppender appender = connection.createAppender(DuckDBConnection.DEFAULT_SCHEMA, TABLE)) {
            Row row = new Row(appender);
            for (Iterator<FloorFrame> frames = tracks.frames().iterator(); frames.hasNext(); ) {
                FloorFrame frame = frames.next();
                if (frame.players().isEmpty()) {
                    row.nobody(frame);
                }
                for (PlayerSighting sighting : frame.players()) {
                    row.sighting(frame, sighting);
                }
            }
        }
    }

    /**
     * Appends rows in the order of {@link TrackColumn#ALL}.
     *
     * @param appender of the table
     */
    private record Row(DuckDBAppender appender) {

        void nobody(FloorFrame frame) throws SQLException {
            appender.beginRow().append(frame.frame()).append(frame.timeSeconds());
            for (int i = 2; i < TrackColumn.ALL.size(); i++) {
                appender.appendNull();
            }
            appender.endRow();
        }

        void sighting(FloorFrame frame, PlayerSighting sighting) throws SQLException {
            PlayerObservation seen = sighting.observation();
            appender.beginRow().append(frame.frame()).append(frame.timeSeconds());
            appender.append(sighting.trackId());
            appender.append(word(sighting.team()));
            appender.append(sighting.teamProbability());
            position(Optional.of(seen.foot()));
            appender.append(word(seen.source()));
            appender.append(seen.score());
            box(seen.box());
            body(seen.body());
            pose(seen.pose());
            appender.endRow();
        }

        private void position(Optional<FloorEstimate> estimate) throws SQLException {
            if (estimate.isEmpty()) {
                nulls(5);
                return;
            }
            FloorEstimate known = estimate.get();
            appender.append(known.mean().xMetres()).append(known.mean().yMetres());
            appender.append(known.covariance().xx())
                    .append(known.covariance().xy())
                    .append(known.covariance().yy());
        }

        private void box(Optional<ImageBox> box) throws SQLException {
            if (box.isEmpty()) {
                nulls(4);
                return;
            }
            ImageBox known = box.get();
            appender.append(known.left())
                    .append(known.top())
                    .append(known.width())
                    .append(known.height());
        }

        private void body(Body body) throws SQLException {
            position(body.leftAnkle());
            position(body.rightAnkle());
            Optional<Facing> facing = body.facing();
            if (facing.isPresent()) {
                appender.append(facing.get().radians()).append(facing.get().standardErrorRadians());
            } else {
                nulls(2);
            }
            number(body.stanceOverShoulders());
            number(body.plantedProbability());
        }

        private void pose(Optional<Pose> pose) throws SQLException {
            if (pose.isEmpty()) {
                nulls(3 * Joint.values().length);
                return;
            }
            for (Keypoint keypoint : pose.get().keypoints()) {
                appender.append(keypoint.position().x())
                        .append(keypoint.position().y())
                        .append(keypoint.score());
            }
        }

        private void number(OptionalDouble value) throws SQLException {
            if (value.isPresent()) {
                appender.append(value.getAsDouble());
            } else {
                appender.appendNull();
            }
        }

        private void nulls(int count) throws SQLException {
            for (int i = 0; i < count; i++) {
                appender.appendNull();
            }
        }

        private static String word(Enum<?> value) {
            return value.name().toLowerCase(Locale.ROOT);
        }
    }
}
