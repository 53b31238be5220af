package floorgauge.app.export;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Properties;
import java.util.stream.Collectors;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;

/** The tables of findings as Apache Parquet, by DuckDB on one thread, so that rows keep their order. */
final class ParquetTables implements Exporter {

    @Override
    public void write(ExportOrder order, ExportFolder folder) {
        for (Table table : FindingTables.of(order.films())) {
            folder.write(table.name() + ".parquet", file -> write(table, file));
        }
    }

    private static void write(Table table, Path file) throws IOException {
        Properties properties = new Properties();
        properties.setProperty("threads", "1");
        try (DuckDBConnection connection =
                        DriverManager.getConnection("jdbc:duckdb:", properties).unwrap(DuckDBConnection.class);
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE TABLE rows ("
                    + table.columns().stream()
                            .map(c -> c.name() + " " + c.type().sql())
                            .collect(Collectors.joining(", "))
                    + ")");
            try (DuckDBAppender appender = connection.createAppender(DuckDBConnection.DEFAULT_SCHEMA, "rows")) {
                for (List<Object> row : table.rows()) {
                    append(appender, row);
                }
            }
            statement.execute(
                    "COPY rows TO '" + file.toString().replace("'", "''") + "' (FORMAT parquet, COMPRESSION zstd)");
        } catch (SQLException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private static void append(DuckDBAppender appender, List<Object> row) throws SQLException {
        appender.beginRow();
        for (Object value : row) {
            if (value instanceof String text) {
                appender.append(text);
            } else if (value instanceof Long whole) {
                appender.append(whole);
            } else if (value instanceof Double number) {
                appender.append(number);
            } else if (value instanceof Boolean truth) {
                appender.append(truth);
            } else {
                appender.appendNull();
            }
        }
        appender.endRow();
    }
}
