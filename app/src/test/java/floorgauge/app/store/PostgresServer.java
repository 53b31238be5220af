package floorgauge.app.store;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A PostgreSQL server of its own on a free loopback port, from the programs that Debian's package installs. */
public final class PostgresServer implements AutoCloseable {

    private static final Path DEBIAN = Path.of("/usr/lib/postgresql");

    private final Path programs;
    private final Path folder;
    private final int port;

    private PostgresServer(Path programs, Path folder, int port) {
        this.programs = programs;
        this.folder = folder;
        this.port = port;
    }

    /** Where the programs lie; empty where they are not installed. */
    public static Optional<Path> programs() {
        if (!Files.isDirectory(DEBIAN)) {
            return Optional.empty();
        }
        try (Stream<Path> versions = Files.list(DEBIAN)) {
            return versions.map(v -> v.resolve("bin"))
                    .filter(b -> Files.isExecutable(b.resolve("initdb")))
                    .max(Comparator.comparing(Path::toString));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** Starts one on an empty folder. */
    public static PostgresServer start(Path folder) throws IOException {
        Path programs = programs().orElseThrow();
        int port;
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = socket.getLocalPort();
        }
        PostgresServer server = new PostgresServer(programs, folder, port);
        server.run("chmod", "-R", "a+rwX", folder.toString());
        server.runAsServer(
                programs.resolve("initdb").toString(), "-D", server.data(), "-U", "coach", "-A", "trust", "-N");
        server.startAgain();
        return server;
    }

    /** Starts it on the data that is there. */
    public void startAgain() throws IOException {
        runAsServer(
                programs.resolve("pg_ctl").toString(),
                "-D",
                data(),
                "-w",
                "-l",
                folder.resolve("log").toString(),
                "-o",
                "-p " + port + " -h 127.0.0.1 -k " + folder,
                "start");
    }

    /** Kills it without a chance to tidy up. */
    public void kill() throws IOException {
        runAsServer(programs.resolve("pg_ctl").toString(), "-D", data(), "-m", "immediate", "stop");
    }

    public String url() {
        return "jdbc:postgresql://127.0.0.1:" + port + "/postgres?user=coach";
    }

    @Override
    public void close() throws IOException {
        kill();
        run("rm", "-rf", folder.toString());
    }

    private String data() {
        return folder.resolve("data").toString();
    }

    /** The server refuses to run as root, so root hands over to the package's own user. */
    private void runAsServer(String... command) throws IOException {
        if (!"root".equals(System.getProperty("user.name"))) {
            run(command);
            return;
        }
        List<String> whole =
                new ArrayList<>(List.of("setpriv", "--reuid=postgres", "--regid=postgres", "--clear-groups"));
        whole.addAll(List.of(command));
        run(whole.toArray(String[]::new));
    }

    private void run(String... command) throws IOException {
        Path log = Files.createTempFile("floorgauge-command", ".log");
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        try {
            if (!process.waitFor(60, TimeUnit.SECONDS) || process.exitValue() != 0) {
                throw new IOException(String.join(" ", command) + ": " + Files.readString(log));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        } finally {
            Files.deleteIfExists(log);
        }
    }
}
