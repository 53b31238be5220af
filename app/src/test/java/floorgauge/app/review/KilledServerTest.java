package floorgauge.app.review;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.Main;
import floorgauge.app.store.PostgresServer;
import floorgauge.app.store.Store;
import floorgauge.app.store.Verdicts;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The server is killed without warning while a thousand verdicts are on their way to it: none that it acknowledged may be
 * missing afterwards.
 */
class KilledServerTest {

    private static final int VERDICTS = 1000;
    private static final int KILLED_AFTER = 300;
    private static final int SENDERS = 4;

    @TempDir
    private Path folder;

    @Test
    void noAcknowledgedVerdictIsLostOnSqlite() throws Exception {
        List<String> acknowledged = saveUntilKilled(() -> {});
        assertAllThere(Store.open(folder.resolve("season/season.db")), acknowledged);
    }

    @Test
    void noAcknowledgedVerdictIsLostOnPostgresqlKilledToo() throws Exception {
        Assumptions.assumeTrue(
                PostgresServer.programs().isPresent(), "no PostgreSQL server is installed in /usr/lib/postgresql");
        try (PostgresServer database = PostgresServer.start(Files.createTempDirectory("floorgauge-postgres"))) {
            List<String> acknowledged = saveUntilKilled(database::kill, "--store", database.url());
            database.startAgain();
            assertAllThere(Store.open(database.url()), acknowledged);
        }
    }

    /** What else dies with the server. */
    @FunctionalInterface
    private interface Kill {
        void run() throws IOException;
    }

    private static void assertAllThere(Store store, List<String> acknowledged) {
        Verdicts verdicts = new Verdicts(store);
        assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(KILLED_AFTER).hasSizeLessThan(VERDICTS);
        assertThat(acknowledged).allMatch(verdicts::holds);
        assertThat(verdicts.given()).isBetween((long) acknowledged.size(), (long) acknowledged.size() + SENDERS);
    }

    private List<String> saveUntilKilled(Kill alongside, String... options) throws Exception {
        Path results = TestSeason.results(folder);
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "review",
                results.toString(),
                "--season",
                folder.resolve("season").toString()));
        command.addAll(Arrays.asList(options));
        Process server = new ProcessBuilder(command)
                .redirectError(folder.resolve("log").toFile())
                .start();
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(server.getInputStream(), StandardCharsets.UTF_8))) {
            String line = out.readLine();
            assertThat(line).as(Files.readString(folder.resolve("log"))).contains("http://127.0.0.1:");
            Asker ask = new Asker(Integer.parseInt(line.replaceAll(".*:(\\d+)/.*", "$1")));
            assertThat(ask.post("/do/agree", "{}").statusCode()).isEqualTo(200);
            String page = ask.get("/").body();
            String finding = page.replaceAll("(?s).*data-finding=\"([^\"]+)\".*", "$1");
            return send(server, alongside, ask, finding);
        } finally {
            server.destroyForcibly().waitFor();
        }
    }

    private static List<String> send(Process server, Kill alongside, Asker ask, String finding)
            throws InterruptedException {
        Queue<String> acknowledged = new ConcurrentLinkedQueue<>();
        AtomicInteger next = new AtomicInteger();
        AtomicInteger killed = new AtomicInteger();
        List<Thread> senders = new ArrayList<>();
        for (int s = 0; s < SENDERS; s++) {
            Thread sender = new Thread(() -> {
                for (int i = next.getAndIncrement(); i < VERDICTS; i = next.getAndIncrement()) {
                    String id = "verdict-" + i;
                    try {
                        boolean kept = ask.post(
                                                "/do/verdict",
                                                "{\"id\":\"" + id + "\",\"finding\":\"" + finding
                                                        + "\",\"answer\":\"RIGHT\"}")
                                        .statusCode()
                                == 200;
                        if (kept) {
                            acknowledged.add(id);
                        }
                        if (acknowledged.size() >= KILLED_AFTER && killed.getAndIncrement() == 0) {
                            server.destroyForcibly();
                            alongside.run();
                        }
                    } catch (IOException e) {
                        return;
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                        return;
                    }
                }
            });
            sender.start();
            senders.add(sender);
        }
        for (Thread sender : senders) {
            sender.join();
        }
        return List.copyOf(acknowledged);
    }
}
