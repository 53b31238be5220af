package floorgauge.app.result;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.BallObservation;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;

/**
 * Writes {@code ball.parquet} beside {@code tracks.parquet}, one row for each frame in which the ball's place is known, and reads it back.
 * There is no file where the ball was not looked for, and one without rows where it was never seen.
 */
public final class BallParquet {

    /** The file's name. */
    public static final String FILE = "ball.parquet";

    private static final String COLUMNS = "frame BIGINT, time_s DOUBLE, x_m DOUBLE, y_m DOUBLE, var_xx_m2 DOUBLE,"
            + " cov_xy_m2 DOUBLE, var_yy_m2 DOUBLE, height_m DOUBLE, x_px DOUBLE, y_px DOUBLE, held_by INTEGER,"
            + " probability DOUBLE";

    private BallParquet() {}

    /** Where the ball of a file of tracks lies, if it lies anywhere. */
    public static Path beside(Path tracks) {
        return tracks.resolveSibling(FILE);
    }

    /** Writes the file; the same ball gives the same bytes. */
    public static void write(List<BallObservation> ball, Path file) throws IOException {
        try (DuckDBConnection connection = TracksParquet.open();
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE TABLE ball (" + COLUMNS + ")");
            try (DuckDBAppender appender = connection.createAppender(DuckDBConnection.DEFAULT_SCHEMA, "ball")) {
                for (BallObservation seen : ball) {
                    append(appender, seen);
                }
            }
            statement.execute("COPY (SELECT * FROM ball ORDER BY frame) TO '" + quoted(file)
                    + "' (FORMAT parquet, COMPRESSION zstd)");
        } catch (SQLException e) {
            throw new IOException("cannot write " + file + ": " + e.getMessage(), e);
        }
    }

    private static void append(DuckDBAppender appender, BallObservation seen) throws SQLException {
        appender.beginRow().append(seen.frame()).append(seen.timeSeconds());
        appender.append(seen.floor().mean().xMetres());
        appender.append(seen.floor().mean().yMetres());
        appender.append(seen.floor().covariance().xx());
        appender.append(seen.floor().covariance().xy());
        appender.append(seen.floor().covariance().yy());
        number(appender, seen.heightMetres());
        number(appender, seen.position().map(p -> OptionalDouble.of(p.x())).orElse(OptionalDouble.empty()));
        number(appender, seen.position().map(p -> OptionalDouble.of(p.y())).orElse(OptionalDouble.empty()));
        if (seen.heldBy().isPresent()) {
            appender.append(seen.heldBy().getAsInt());
        } else {
            appender.appendNull();
        }
        appender.append(seen.probability());
        appender.endRow();
    }

    private static void number(DuckDBAppender appender, OptionalDouble value) throws SQLException {
        if (value.isPresent()) {
            appender.append(value.getAsDouble());
        } else {
            appender.appendNull();
        }
    }

    /**
     * Reads a file.
     *
     * @return empty where there is no such file
     * @throws MendableException where it is not as {@link #write} leaves it
     */
    public static Optional<List<BallObservation>> read(Path file) {
        return read(file, "");
    }

    /** The same between two times of the film, seconds, both counted. */
    public static Optional<List<BallObservation>> read(Path file, double fromSeconds, double toSeconds) {
        return read(file, " WHERE time_s BETWEEN " + fromSeconds + " AND " + toSeconds);
    }

    private static Optional<List<BallObservation>> read(Path file, String filter) {
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        List<BallObservation> ball = new ArrayList<>();
        try (DuckDBConnection connection = ParquetSource.open();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "SELECT * FROM read_parquet('" + quoted(file) + "')" + filter + " ORDER BY frame")) {
            while (rows.next()) {
                ball.add(observation(rows));
            }
        } catch (SQLException | IllegalArgumentException e) {
            String why = e.getMessage() == null
                    ? "unreadable"
                    : e.getMessage().lines().findFirst().orElse("unreadable");
            throw new MendableException(
                    file + " is not a ball.parquet as floorgauge writes it: " + why + "; move it away or measure again",
                    e);
        }
        return Optional.of(ball);
    }

    private static BallObservation observation(ResultSet rows) throws SQLException {
        OptionalDouble x = number(rows, "x_px");
        int holder = rows.getInt("held_by");
        OptionalInt heldBy = rows.wasNull() ? OptionalInt.empty() : OptionalInt.of(holder);
        return new BallObservation(
                rows.getLong("frame"),
                rows.getDouble("time_s"),
                new FloorEstimate(
                        new FloorPoint(rows.getDouble("x_m"), rows.getDouble("y_m")),
                        new FloorCovariance(
                                rows.getDouble("var_xx_m2"), rows.getDouble("cov_xy_m2"), rows.getDouble("var_yy_m2"))),
                number(rows, "height_m"),
                x.isPresent() ? Optional.of(new PixelPoint(x.getAsDouble(), rows.getDouble("y_px"))) : Optional.empty(),
                heldBy,
                rows.getDouble("probability"));
    }

    private static OptionalDouble number(ResultSet rows, String column) throws SQLException {
        double value = rows.getDouble(column);
        return rows.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static String quoted(Path file) {
        return file.toString().replace("'", "''");
    }
}
