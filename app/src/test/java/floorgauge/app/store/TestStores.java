package floorgauge.app.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The databases that tests run on: SQLite always, PostgreSQL where Debian's server can be started. */
public enum TestStores {
    SQLITE,
    POSTGRESQL;

    /** A store that lasts until it is closed. */
    public record Opened(Store store, AutoCloseable end) implements AutoCloseable {

        @Override
        public void close() {
            try {
                end.close();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        }
    }

    /** Those that are there; says which is not. */
    public static List<TestStores> all() {
        List<TestStores> stores = new ArrayList<>(List.of(SQLITE));
        if (PostgresServer.programs().isPresent()) {
            stores.add(POSTGRESQL);
        } else {
            System.out.println("not run on PostgreSQL: no server is installed in /usr/lib/postgresql");
        }
        return stores;
    }

    /** An empty store. */
    public Opened open(Path folder) {
        try {
            if (this == SQLITE) {
                Path file = Files.createTempDirectory(folder, "store").resolve("season.db");
                return new Opened(Store.open(file), () -> {});
            }
            PostgresServer server = PostgresServer.start(Files.createTempDirectory("floorgauge-postgres"));
            return new Opened(Store.open(server.url()), server);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whether PostgreSQL is there. */
    public static Optional<Path> postgres() {
        return PostgresServer.programs();
    }
}
