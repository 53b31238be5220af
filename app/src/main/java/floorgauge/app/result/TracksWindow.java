package floorgauge.app.result;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.Joint;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.duckdb.DuckDBConnection;

/**
 * A stretch of {@code tracks.parquet}, without reading the rest into memory.
 *
 * @param file the table
 * @param fromSeconds start, presentation time
 * @param toSeconds end
 */
public record TracksWindow(Path file, double fromSeconds, double toSeconds) {

    private static final int PICTURE_NUMBERS = 4 + 3 * Joint.values().length;

    /** All of a table. */
    public static TracksWindow all(Path file) {
        return new TracksWindow(file, -1e9, 1e9);
    }

    /**
     * Where a player stood in a frame.
     *
     * @param timeSeconds presentation time
     * @param trackId who
     * @param foot court frame
     * @param predicted whether nothing was seen in this frame
     */
    public record Place(double timeSeconds, int trackId, FloorEstimate foot, boolean predicted) {}

    /**
     * A player in a picture.
     *
     * @param trackId who
     * @param predicted whether nothing was seen in this frame
     * @param numbers box left, top, width, height, then x, y and score of the 17 joints in COCO's order, pixels; NaN where
     *     unknown
     */
    public record InPicture(int trackId, boolean predicted, double[] numbers) {}

    /**
     * A frame.
     *
     * @param timeSeconds presentation time
     * @param players in order of id
     */
    public record Picture(double timeSeconds, List<InPicture> players) {}

    /** @throws MendableException where the file is not there, or not a table of tracks */
    public List<Place> places() {
        List<Place> places = new ArrayList<>();
        read(
                "time_s, player_id, x_m, y_m, var_xx_m2, cov_xy_m2, var_yy_m2, foot_source",
                "player_id IS NOT NULL",
                rows -> places.add(place(rows)));
        return places;
    }

    private static Place place(ResultSet rows) throws SQLException {
        return new Place(
                rows.getDouble(1),
                rows.getInt(2),
                new FloorEstimate(
                        new FloorPoint(rows.getDouble(3), rows.getDouble(4)),
                        new FloorCovariance(rows.getDouble(5), rows.getDouble(6), rows.getDouble(7))),
                isPredicted(rows.getString(8)));
    }

    /** Frame by frame. @throws MendableException as above */
    public List<Picture> pictures() {
        String joints = java.util.Arrays.stream(Joint.values())
                .map(TrackColumn::jointName)
                .map(n -> "joint_" + n + "_x_px, joint_" + n + "_y_px, joint_" + n + "_score")
                .collect(Collectors.joining(", "));
        TreeMap<Double, List<InPicture>> frames = new TreeMap<>();
        read(
                "time_s, player_id, foot_source, box_left_px, box_top_px, box_width_px, box_height_px, " + joints,
                "TRUE",
                rows -> {
                    List<InPicture> players = frames.computeIfAbsent(rows.getDouble(1), t -> new ArrayList<>());
                    int id = rows.getInt(2);
                    if (!rows.wasNull()) {
                        players.add(new InPicture(id, isPredicted(rows.getString(3)), numbers(rows)));
                    }
                });
        return frames.entrySet().stream()
                .map(e -> new Picture(e.getKey(), e.getValue()))
                .toList();
    }

    private static double[] numbers(ResultSet rows) throws SQLException {
        double[] numbers = new double[PICTURE_NUMBERS];
        for (int i = 0; i < numbers.length; i++) {
            double value = rows.getDouble(4 + i);
            numbers[i] = rows.wasNull() ? Double.NaN : value;
        }
        return numbers;
    }

    private static boolean isPredicted(String source) {
        return FootSource.PREDICTED.name().toLowerCase(Locale.ROOT).equals(source);
    }

    /** Takes one row. */
    @FunctionalInterface
    private interface Rows {
        void take(ResultSet row) throws SQLException;
    }

    private void read(String columns, String filter, Rows rows) {
        if (!Files.isRegularFile(file)) {
            throw new MendableException("no such file: " + file + "; measure the film again");
        }
        String sql =
                "SELECT " + columns + " FROM read_parquet('" + file.toString().replace("'", "''") + "') WHERE " + filter
                        + " AND time_s BETWEEN " + fromSeconds + " AND " + toSeconds + " ORDER BY time_s, player_id";
        try (DuckDBConnection connection = ParquetSource.open();
                Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(sql)) {
            while (result.next()) {
                rows.take(result);
            }
        } catch (SQLException | IllegalArgumentException e) {
            throw new MendableException(
                    file + " is not a tracks.parquet as floorgauge writes it; measure the film again", e);
        }
    }
}
