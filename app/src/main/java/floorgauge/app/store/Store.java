package floorgauge.app.store;

import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.Locale;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.configuration.FluentConfiguration;
import org.flywaydb.core.api.output.ValidateResult;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * An open store. Safe for use by several threads: every call opens a connection of its own and every change is one
 * transaction, on the disk when the call returns.
 */
public final class Store {

    private static final String MIGRATIONS = "classpath:floorgauge/app/store/migration";
    private static final int BUSY_MILLISECONDS = 10_000;

    private final Jdbi jdbi;
    private final boolean sqlite;

    private Store(Jdbi jdbi, boolean sqlite) {
        this.jdbi = jdbi;
        this.sqlite = sqlite;
    }

    /**
     * Opens a file, which is made where it is missing.
     *
     * @throws MendableException where it cannot be written, is no store, or was written by a newer version
     */
    public static Store open(Path file) {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
        } catch (IOException e) {
            throw new MendableException(
                    "cannot make " + file.toAbsolutePath().getParent() + " (" + e.getMessage()
                            + "); name another place for the store",
                    e);
        }
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setBusyTimeout(BUSY_MILLISECONDS);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
        return open(Jdbi.create(source), Flyway.configure().dataSource(source), file.toString(), true);
    }

    /**
     * Opens a database of a server.
     *
     * @param url such as {@code jdbc:postgresql://host/database?user=name&password=word}
     * @throws MendableException where it cannot be reached, or was written by a newer version
     */
    public static Store open(String url) {
        if (!url.startsWith("jdbc:postgresql:")) {
            throw new MendableException("--store " + withoutPassword(url)
                    + ": expected a file, or a URL that begins with jdbc:postgresql:");
        }
        Jdbi jdbi = Jdbi.create(url);
        return open(jdbi, Flyway.configure().dataSource(url, null, null), withoutPassword(url), false);
    }

    private static Store open(Jdbi jdbi, FluentConfiguration flywayOf, String name, boolean sqlite) {
        Flyway flyway = flywayOf.locations(MIGRATIONS)
                .table("schema_history")
                .ignoreMigrationPatterns("*:future")
                .loggers("slf4j")
                .load();
        try {
            refuseNewer(flyway, name);
            flyway.migrate();
        } catch (FlywayException e) {
            throw new MendableException(
                    "cannot open the store " + name + ": " + firstLine(e) + "; name another file or URL", e);
        }
        return new Store(jdbi, sqlite);
    }

    private static void refuseNewer(Flyway flyway, String name) {
        boolean newer = Arrays.stream(flyway.info().all())
                .map(MigrationInfo::getState)
                .anyMatch(s -> s.name().startsWith("FUTURE"));
        if (newer) {
            throw new MendableException("the store " + name
                    + " was written by a newer version of floorgauge; update the program, or name another store");
        }
        ValidateResult validated = flyway.validateWithResult();
        boolean changed = validated.invalidMigrations.stream()
                .anyMatch(m ->
                        m.errorDetails.errorMessage.toLowerCase(Locale.ROOT).contains("checksum"));
        if (changed) {
            throw new MendableException(
                    "the store " + name + " was made by another build of floorgauge; restore a backup or name another");
        }
    }

    private static String withoutPassword(String url) {
        return url.replaceAll("password=[^&]*", "password=…");
    }

    private static String firstLine(Throwable failure) {
        Throwable cause = failure;
        while (cause.getCause() != null) {
            cause = cause.getCause();
        }
        String message = cause.getMessage() == null ? cause.toString() : cause.getMessage();
        return message.lines().findFirst().orElse(message).strip();
    }

    /** The database, for the classes of this package. */
    Jdbi jdbi() {
        return jdbi;
    }

    /**
     * Copies the whole store into one file, while it is in use.
     *
     * @throws MendableException where the store is on a server, or the file is there already or cannot be written
     */
    public void backUp(Path file) {
        if (!sqlite) {
            throw new MendableException(
                    "a store on a PostgreSQL server is backed up by the server's own means, such as pg_dump");
        }
        if (Files.exists(file)) {
            throw new MendableException(file + " is there already; name a new file for the backup");
        }
        Path beside = file.resolveSibling(file.getFileName() + ".part");
        try (Handle handle = jdbi.open()) {
            Files.createDirectories(file.toAbsolutePath().getParent());
            Files.deleteIfExists(beside);
            handle.getConnection()
                    .createStatement()
                    .executeUpdate(
                            "VACUUM INTO '" + beside.toAbsolutePath().toString().replace("'", "''") + "'");
            Files.move(beside, file);
        } catch (SQLException | IOException e) {
            throw new MendableException("cannot write " + file + " (" + e.getMessage() + "); name another place", e);
        }
    }

    /** Whether no film is in it. */
    public boolean isEmpty() {
        return jdbi.withHandle(h -> h.createQuery("SELECT COUNT(*) FROM films")
                        .mapTo(Long.class)
                        .one())
                == 0;
    }

    /** A value kept under a name; empty where none is. */
    public java.util.Optional<String> setting(String name) {
        return jdbi.withHandle(h -> h.createQuery("SELECT value FROM settings WHERE name = :name")
                .bind("name", name)
                .mapTo(String.class)
                .findOne());
    }

    /** Keeps a value under a name. */
    public void keep(String name, String value) {
        jdbi.useTransaction(h -> h.createUpdate("INSERT INTO settings (name, value) VALUES (:name, :value)"
                        + " ON CONFLICT (name) DO UPDATE SET value = excluded.value")
                .bind("name", name)
                .bind("value", value)
                .execute());
    }
}
