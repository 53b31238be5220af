package floorgauge.app.result;

import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.atomic.AtomicReference;
import org.duckdb.DuckDBConnection;

/**
 * The one database in memory through which Parquet files are read: opening one for each look costs six times the look
 * itself. It holds no tables and keeps nothing of the files. Safe for use by several threads, each on its own connection.
 */
final class ParquetSource {

    private static final AtomicReference<DuckDBConnection> SHARED = new AtomicReference<>();

    private ParquetSource() {}

    /** A connection to read with; close it. */
    static synchronized DuckDBConnection open() throws SQLException {
        DuckDBConnection shared = SHARED.get();
        if (shared == null) {
            DuckDBConnection made = TracksParquet.open();
            try (Statement statement = made.createStatement()) {
                // A file may be measured anew while the page is open.
                statement.execute("SET enable_external_file_cache = false");
            }
            SHARED.set(made);
            shared = made;
        }
        return shared.duplicate().unwrap(DuckDBConnection.class);
    }
}
