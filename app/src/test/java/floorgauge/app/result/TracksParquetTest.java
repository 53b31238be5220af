package floorgauge.app.result;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.app.InventedFilm;
import floorgauge.court.track.FilmTracks;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TracksParquetTest {

    @TempDir
    private Path folder;

    @Test
    void noFrameIsAFileWithoutRows() throws IOException, SQLException {
        Path file = folder.resolve("none.parquet");
        TracksParquet.write(new FilmTracks(new TreeMap<>(), List.of(), Optional.empty()), file);
        assertThat(query("SELECT count(*) FROM '" + file + "'")).isEqualTo("0");
    }

    @Test
    void everySightingIsARowAndAFrameWithoutAnyoneIsOneToo() throws IOException, SQLException {
        Path file = folder.resolve("it's ours ü.parquet");
        TracksParquet.write(InventedFilm.tracks(), file);
        String from = " FROM '" + file.toString().replace("'", "''") + "'";
        assertThat(query("SELECT count(*)" + from)).isEqualTo(String.valueOf(6 * 149 + 1));
        assertThat(query("SELECT count(*)" + from + " WHERE player_id IS NULL AND frame = 0 AND x_m IS NULL"))
                .isEqualTo("1");
        assertThat(query("SELECT team || foot_source" + from + " WHERE player_id = 6 AND frame = 75"))
                .isEqualTo("secondpredicted");
        assertThat(query("SELECT count(joint_left_ankle_x_px)" + from)).isEqualTo(String.valueOf(6 * 149 - 9));
    }

    @Test
    void positionsAndCovariancesAreExact() throws IOException, SQLException {
        Path file = folder.resolve("tracks.parquet");
        FilmTracks tracks = InventedFilm.tracks();
        TracksParquet.write(tracks, file);
        String row = " FROM '" + file + "' WHERE player_id = 2 AND frame = 65";
        var seen = tracks.players().get(1).observations().get(64);
        assertThat(Double.parseDouble(query("SELECT x_m" + row)))
                .isCloseTo(seen.foot().mean().xMetres(), within(0.0));
        assertThat(Double.parseDouble(query("SELECT cov_xy_m2" + row)))
                .isCloseTo(seen.foot().covariance().xy(), within(0.0));
        assertThat(Double.parseDouble(query("SELECT box_height_px" + row)))
                .isCloseTo(seen.box().orElseThrow().height(), within(0.0));
    }

    @Test
    void theSameTracksGiveTheSameBytes() throws IOException {
        TracksParquet.write(InventedFilm.tracks(), folder.resolve("a.parquet"));
        TracksParquet.write(InventedFilm.tracks(), folder.resolve("b.parquet"));
        assertThat(folder.resolve("a.parquet")).hasSameBinaryContentAs(folder.resolve("b.parquet"));
    }

    @Test
    void aFolderThatIsNotThereIsReported() {
        assertThatThrownBy(() -> TracksParquet.write(InventedFilm.tracks(), folder.resolve("no/such/t.parquet")))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("t.parquet");
    }

    private static String query(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
                Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(sql)) {
            assertThat(result.next()).isTrue();
            return result.getString(1);
        }
    }
}
