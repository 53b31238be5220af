package floorgauge.app.result;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.BallObservation;
import floorgauge.court.track.Body;
import floorgauge.court.track.Facing;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Pose;
import floorgauge.court.track.Team;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.duckdb.DuckDBConnection;

/** Reads {@code tracks.parquet} back, with the ball of {@code ball.parquet} where that lies beside it. Doubts about identities are not in the file, so they are none here. */
public final class TracksParquetReader {

    private final ResultSet rows;
    private final SortedMap<Long, Double> times = new TreeMap<>();
    private final SortedMap<Integer, Building> players = new TreeMap<>();

    private TracksParquetReader(ResultSet rows) {
        this.rows = rows;
    }

    /** A track as its rows come in. */
    private record Building(Team team, double teamProbability, List<PlayerObservation> observations) {}

    /**
     * Reads a file.
     *
     * @throws MendableException where it is not there, or not a file of tracks as {@link TracksParquet} writes
     */
    public static FilmTracks read(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new MendableException("no such file: " + file + "; name the tracks.parquet of an earlier run");
        }
        String columns = TrackColumn.ALL.stream().map(TrackColumn::name).collect(Collectors.joining(", "));
        String sql = "SELECT " + columns + " FROM read_parquet('"
                + file.toString().replace("'", "''") + "') ORDER BY player_id, frame";
        try (DuckDBConnection connection = ParquetSource.open();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            return new TracksParquetReader(rows).read(BallParquet.read(BallParquet.beside(file)));
        } catch (SQLException | IllegalArgumentException e) {
            throw new MendableException(
                    file + " is not a tracks.parquet as floorgauge writes it: " + firstLine(e.getMessage()), e);
        }
    }

    private static String firstLine(String message) {
        return message == null ? "unreadable" : message.lines().findFirst().orElse("unreadable");
    }

    private FilmTracks read(Optional<List<BallObservation>> ball) throws SQLException {
        while (rows.next()) {
            long frame = rows.getLong("frame");
            double time = rows.getDouble("time_s");
            times.put(frame, time);
            int id = rows.getInt("player_id");
            if (!rows.wasNull()) {
                Team team = Team.valueOf(word("team"));
                double probability = rows.getDouble("team_probability");
                players.computeIfAbsent(id, i -> new Building(team, probability, new ArrayList<>()))
                        .observations()
                        .add(observation(frame, time));
            }
        }
        List<PlayerTrack> tracks = new ArrayList<>();
        players.forEach((id, built) -> tracks.add(
                new PlayerTrack(id, built.team(), built.teamProbability(), built.observations(), List.of())));
        return new FilmTracks(times, tracks, ball);
    }

    private PlayerObservation observation(long frame, double time) throws SQLException {
        FloorEstimate foot = position("")
                .orElseThrow(() -> new IllegalArgumentException("frame " + frame + " holds a player without a place"));
        return new PlayerObservation(
                frame,
                time,
                foot,
                FootSource.valueOf(word("foot_source")),
                box(),
                pose(),
                body(),
                rows.getDouble("detector_score"));
    }

    private Body body() throws SQLException {
        OptionalDouble facing = number("facing_rad");
        return new Body(
                position("left_ankle_"),
                position("right_ankle_"),
                facing.isPresent()
                        ? Optional.of(new Facing(facing.getAsDouble(), rows.getDouble("facing_se_rad")))
                        : Optional.empty(),
                number("stance_over_shoulders"),
                number("planted_probability"));
    }

    private Optional<FloorEstimate> position(String prefix) throws SQLException {
        OptionalDouble x = number(prefix + "x_m");
        if (x.isEmpty()) {
            return Optional.empty();
        }
        FloorCovariance covariance = new FloorCovariance(
                rows.getDouble(prefix + "var_xx_m2"),
                rows.getDouble(prefix + "cov_xy_m2"),
                rows.getDouble(prefix + "var_yy_m2"));
        return Optional.of(
                new FloorEstimate(new FloorPoint(x.getAsDouble(), rows.getDouble(prefix + "y_m")), covariance));
    }

    private Optional<ImageBox> box() throws SQLException {
        OptionalDouble left = number("box_left_px");
        return left.isEmpty()
                ? Optional.empty()
                : Optional.of(new ImageBox(
                        left.getAsDouble(),
                        rows.getDouble("box_top_px"),
                        rows.getDouble("box_width_px"),
                        rows.getDouble("box_height_px")));
    }

    private Optional<Pose> pose() throws SQLException {
        List<Keypoint> keypoints = new ArrayList<>();
        for (Joint joint : Joint.values()) {
            String name = "joint_" + TrackColumn.jointName(joint);
            OptionalDouble x = number(name + "_x_px");
            if (x.isEmpty()) {
                return Optional.empty();
            }
            PixelPoint at = new PixelPoint(x.getAsDouble(), rows.getDouble(name + "_y_px"));
            keypoints.add(new Keypoint(at, rows.getDouble(name + "_score")));
        }
        return Optional.of(new Pose(keypoints));
    }

    private OptionalDouble number(String column) throws SQLException {
        double value = rows.getDouble(column);
        return rows.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private String word(String column) throws SQLException {
        String word = rows.getString(column);
        if (word == null) {
            throw new IllegalArgumentException("a player without " + column);
        }
        return word.toUpperCase(Locale.ROOT);
    }
}
