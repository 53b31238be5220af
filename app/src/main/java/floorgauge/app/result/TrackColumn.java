package floorgauge.app.result;

import floorgauge.court.track.Joint;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * A column of {@code tracks.parquet}.
 *
 * @param name with its unit
 * @param type in SQL
 */
record TrackColumn(String name, String type) {

    /** All columns, in order. */
    static final List<TrackColumn> ALL = all();

    TrackColumn {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(type, "type");
    }

    /** The name of a joint in column names, such as {@code left_ankle}. */
    static String jointName(Joint joint) {
        return joint.name().toLowerCase(Locale.ROOT);
    }

    private static List<TrackColumn> all() {
        List<TrackColumn> columns = new ArrayList<>();
        columns.add(new TrackColumn("frame", "BIGINT"));
        columns.add(new TrackColumn("time_s", "DOUBLE"));
        columns.add(new TrackColumn("player_id", "INTEGER"));
        columns.add(new TrackColumn("team", "VARCHAR"));
        columns.add(new TrackColumn("team_probability", "DOUBLE"));
        position(columns, "");
        columns.add(new TrackColumn("foot_source", "VARCHAR"));
        columns.add(new TrackColumn("detector_score", "DOUBLE"));
        for (String side : List.of("left", "top", "width", "height")) {
            columns.add(new TrackColumn("box_" + side + "_px", "DOUBLE"));
        }
        position(columns, "left_ankle_");
        position(columns, "right_ankle_");
        columns.add(new TrackColumn("facing_rad", "DOUBLE"));
        columns.add(new TrackColumn("facing_se_rad", "DOUBLE"));
        columns.add(new TrackColumn("stance_over_shoulders", "DOUBLE"));
        columns.add(new TrackColumn("planted_probability", "DOUBLE"));
        for (Joint joint : Joint.values()) {
            columns.add(new TrackColumn("joint_" + jointName(joint) + "_x_px", "DOUBLE"));
            columns.add(new TrackColumn("joint_" + jointName(joint) + "_y_px", "DOUBLE"));
            columns.add(new TrackColumn("joint_" + jointName(joint) + "_score", "DOUBLE"));
        }
        return List.copyOf(columns);
    }

    private static void position(List<TrackColumn> columns, String prefix) {
        columns.add(new TrackColumn(prefix + "x_m", "DOUBLE"));
        columns.add(new TrackColumn(prefix + "y_m", "DOUBLE"));
        columns.add(new TrackColumn(prefix + "var_xx_m2", "DOUBLE"));
        columns.add(new TrackColumn(prefix + "cov_xy_m2", "DOUBLE"));
        columns.add(new TrackColumn(prefix + "var_yy_m2", "DOUBLE"));
    }
}
