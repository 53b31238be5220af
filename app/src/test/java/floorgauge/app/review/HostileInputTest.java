package floorgauge.app.review;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import floorgauge.app.store.Films;
import floorgauge.app.store.Player;
import floorgauge.app.store.Roster;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.Verdicts;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.slf4j.LoggerFactory;

class HostileInputTest {

    private static final String SCRIPT = "<script>alert(1)</script>\"'&";

    @TempDir
    private Path folder;

    private Store store;
    private StoredFilm film;
    private ReviewServer server;
    private Asker ask;
    private final ListAppender<ILoggingEvent> log = new ListAppender<>();

    @BeforeEach
    void start() throws IOException {
        store = TestSeason.store(folder);
        film = new Films(store).newest().orElseThrow();
        server = TestSeason.serve(store, folder);
        ask = new Asker(server.port());
        log.start();
        ((Logger) LoggerFactory.getLogger(Guard.class)).addAppender(log);
    }

    @AfterEach
    void stop() {
        ((Logger) LoggerFactory.getLogger(Guard.class)).detachAppender(log);
        server.close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"evil.example", "evil.example:80", "127.0.0.1.evil.example", "", "localhost.", "[::2]"})
    void anotherHostIsRefused(String host) throws IOException {
        String answer = ask.raw("GET / HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n");
        assertThat(answer).matches("HTTP/1.1 4(00|21).*");
    }

    @Test
    void thisHostIsAnswered() throws IOException {
        for (String host : List.of("127.0.0.1", "localhost", "LOCALHOST", "[::1]")) {
            assertThat(ask.raw("GET / HTTP/1.1\r\nHost: " + host + ":" + ask.port() + "\r\nConnection: close\r\n\r\n"))
                    .startsWith("HTTP/1.1 200");
        }
    }

    @Test
    void aChangeFromAnotherSiteIsRefused() throws Exception {
        String body = "{\"id\":\"a\",\"finding\":\"x\",\"answer\":\"RIGHT\"}";
        assertThat(ask.post("/do/verdict", body, "Origin", "http://evil.example", "Content-Type", "application/json")
                        .statusCode())
                .isEqualTo(403);
        assertThat(ask.post("/do/verdict", body, "Content-Type", "application/json")
                        .statusCode())
                .isEqualTo(403);
        assertThat(ask.post("/do/verdict", body, "Origin", "null", "Content-Type", "application/json")
                        .statusCode())
                .isEqualTo(403);
        assertThat(ask.post("/do/verdict", body, "Origin", ask.origin(), "Content-Type", "text/plain")
                        .statusCode())
                .isEqualTo(415);
        assertThat(ask.post(
                                "/do/verdict",
                                body,
                                "Origin",
                                ask.origin(),
                                "Content-Type",
                                "application/json",
                                "Sec-Fetch-Site",
                                "cross-site")
                        .statusCode())
                .isEqualTo(403);
        assertThat(new Verdicts(store).given()).isZero();
        assertThat(log.list).hasSize(5).allMatch(e -> !e.getFormattedMessage().contains("\n"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/page/..%2f..%2flogback.xml",
                "/page/%2e%2e/logback.xml",
                "/page/../logback.xml",
                "/page/uplot/..%2fpage.css",
                "/film/..%2f..%2fetc%2fpasswd",
                "/practice/..%5c..%5c",
                "/finding/%00",
                "/nothing"
            })
    void aPathLeadsNowhereElse(String path) throws IOException {
        String answer = ask.raw("GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n");
        assertThat(answer).matches("HTTP/1.1 4\\d\\d.*");
    }

    @Test
    void anEndlessHeaderIsCutOff() throws IOException {
        String answer = ask.raw("GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Long: " + "a".repeat(200_000) + "\r\n\r\n");
        assertThat(answer).matches("(HTTP/1.1 431.*)?");
        assertThat(ask.raw("GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n"))
                .startsWith("HTTP/1.1 200");
    }

    @Test
    void aLargeBodyIsRefused() throws Exception {
        HttpResponse<String> answer = ask.post("/do/player", "{\"name\":\"" + "a".repeat(100_000) + "\"}");
        assertThat(answer.statusCode()).isEqualTo(413);
        assertThat(new Roster(store).players()).isEmpty();
    }

    @Test
    void whatIsNoJsonOrNoVerdictIsRefusedInASentence() throws Exception {
        String id = new Films(store).findings(film.id()).get(0).id();
        for (String body : List.of(
                "",
                "[]",
                "{",
                "{}",
                "{\"finding\":\"none\"}",
                "{\"id\":\"a\",\"finding\":\"" + id + "\",\"answer\":\"MAYBE\"}",
                "{\"id\":\"a/../b\",\"finding\":\"" + id + "\",\"answer\":\"RIGHT\"}",
                "{\"id\":\"a\",\"finding\":\"" + id + "\",\"answer\":\"RIGHT\",\"from\":5,\"to\":1}",
                "{\"id\":\"a\",\"finding\":\"" + id + "\",\"answer\":\"RIGHT\",\"from\":-50}",
                "{\"id\":\"a\",\"finding\":\"" + id + "\",\"answer\":\"RIGHT\",\"grade\":9}",
                "{\"id\":\"a\",\"finding\":\"" + id
                        + "\",\"answer\":\"RIGHT\",\"roles\":[{\"role\":\"user\",\"track\":99}]}",
                "{\"id\":\"a\",\"finding\":\"" + id + "\",\"answer\":\"RIGHT\",\"note\":\"" + "n".repeat(3000)
                        + "\"}")) {
            HttpResponse<String> answer = ask.post("/do/verdict", body);
            assertThat(answer.statusCode()).as(body).isBetween(400, 404);
            assertThat(answer.body()).startsWith("{\"error\":\"");
        }
        assertThat(new Verdicts(store).given()).isZero();
    }

    @Test
    void scriptInNamesAndNotesIsShownAsText() throws Exception {
        Roster roster = new Roster(store);
        roster.keep(new Player("p", SCRIPT, OptionalInt.of(7), "<b>squad", "<i>place", true));
        roster.assign(film, 2, Optional.of("p"));
        String id = new Films(store).findings(film.id()).get(0).id();
        String note = "\"note\":\"<img src=x onerror=alert(1)></textarea>\",\"label\":\"\\\"><svg onload=alert(1)>\"";
        assertThat(ask.post(
                                "/do/verdict",
                                "{\"id\":\"a\",\"finding\":\"" + id + "\",\"answer\":\"RIGHT\"," + note + "}")
                        .statusCode())
                .isEqualTo(200);
        assertThat(ask.post(
                                "/do/note",
                                "{\"film\":\"" + film.id() + "\",\"note\":\"</textarea><script>alert(1)</script>\"}")
                        .statusCode())
                .isEqualTo(200);
        assertThat(ask.get("/").body()).contains("&lt;/textarea&gt;");
        for (String path : List.of(
                "/",
                "/practice/" + film.id() + "/players",
                "/practice/" + film.id() + "/by-hand",
                "/finding/" + id,
                "/players",
                "/player/p",
                "/practices",
                "/trends",
                "/keys",
                "/trends/marks?topic=<script>&who=<script>&day=2026-01-01",
                "/before")) {
            HttpResponse<String> page = ask.get(path.replace("<", "%3C").replace(">", "%3E"));
            assertThat(page.statusCode()).as(path).isEqualTo(200);
            assertThat(page.body())
                    .as(path)
                    .doesNotContain("<script>", "<img src=x", "<svg onload", "<b>squad", "<i>place", "<practice>");
            String withoutValues = page.body().replaceAll("\"[^\"]*\"", "\"\"");
            assertThat(withoutValues).as(path).doesNotContainPattern("(?i)<[^>]+\\s(on[a-z]+|style)=");
        }
    }

    @Test
    void everyAnswerCarriesAStrictPolicy() throws Exception {
        for (String path : List.of("/", "/page/page.css", "/nothing", "/data/keys")) {
            HttpResponse<String> answer = ask.get(path);
            String policy =
                    answer.headers().firstValue("Content-Security-Policy").orElse("");
            assertThat(policy).contains("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'");
            assertThat(policy).doesNotContain("unsafe");
            assertThat(answer.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
            assertThat(answer.headers().firstValue("Server")).isEmpty();
        }
    }

    @Test
    void nothingIsShownBeforeTheNoticeWasRead() throws Exception {
        Store fresh = Store.open(folder.resolve("fresh.db"));
        try (ReviewServer unread = new ReviewServer(
                        fresh, new ReviewServer.Settings("127.0.0.1", 0, Set.of(), Optional.empty(), folder))
                .start()) {
            Asker other = new Asker(unread.port());
            assertThat(other.get("/").headers().firstValue("Location")).contains("/before");
            assertThat(other.get("/before").body()).contains("consent", "minors");
            assertThat(other.get("/data/trends").statusCode()).isEqualTo(403);
            assertThat(other.post("/do/agree", "{}").statusCode()).isEqualTo(200);
            assertThat(other.get("/").statusCode()).isEqualTo(200);
        }
    }

    @Test
    void beyondTheLoopbackATokenIsAskedFor() throws Exception {
        try (ReviewServer open = new ReviewServer(
                        store, new ReviewServer.Settings("127.0.0.1", 0, Set.of(), Optional.of("word"), folder))
                .start()) {
            Asker other = new Asker(open.port());
            assertThat(other.get("/").statusCode()).isEqualTo(401);
            assertThat(other.get("/?token=wrong").statusCode()).isEqualTo(401);
            HttpResponse<String> entered = other.get("/?token=word");
            assertThat(entered.statusCode()).isEqualTo(200);
            String cookie = entered.headers().firstValue("Set-Cookie").orElseThrow();
            assertThat(cookie).contains("HttpOnly", "SameSite=Strict");
            assertThat(other.get("/practices", "Cookie", cookie.split(";", 2)[0])
                            .statusCode())
                    .isEqualTo(200);
        }
    }

    @Test
    void aFilmIsHandedOutByRangesAndACutOneDoesNoHarm() throws Exception {
        Path sample = Path.of(System.getProperty("floorgauge.root", "..")).resolve("sample-clips/pin-down-sound.mp4");
        Assumptions.assumeTrue(Files.isRegularFile(sample), "no sample clip at " + sample);
        byte[] bytes = Files.readAllBytes(sample);
        Path clip = Files.write(folder.resolve("film.mp4"), bytes);
        new Films(store).setFilm(film.id(), Optional.of(clip));
        HttpResponse<String> whole = ask.get("/film/" + film.id());
        assertThat(whole.statusCode()).isEqualTo(200);
        assertThat(whole.body()).hasSize(bytes.length);
        HttpResponse<String> part = ask.get("/film/" + film.id(), "Range", "bytes=100-199");
        assertThat(part.statusCode()).isEqualTo(206);
        assertThat(part.body().getBytes(StandardCharsets.ISO_8859_1))
                .isEqualTo(java.util.Arrays.copyOfRange(bytes, 100, 200));
        assertThat(part.headers().firstValue("Content-Range")).contains("bytes 100-199/" + bytes.length);
        assertThat(ask.get("/film/" + film.id(), "Range", "bytes=-10").headers().firstValue("Content-Range"))
                .contains("bytes " + (bytes.length - 10) + "-" + (bytes.length - 1) + "/" + bytes.length);
        assertThat(ask.get("/film/" + film.id(), "Range", "bytes=" + (bytes.length - 10) + "-")
                        .body())
                .hasSize(10);
        assertThat(ask.get("/film/" + film.id(), "Range", "bytes=" + bytes.length + "-")
                        .statusCode())
                .isEqualTo(416);
        assertThat(ask.get("/film/" + film.id(), "Range", "bytes=0-1,5-6").statusCode())
                .isEqualTo(200);
        Files.write(clip, java.util.Arrays.copyOf(bytes, 60));
        assertThat(ask.get("/film/" + film.id()).statusCode()).isEqualTo(404);
        String id = new Films(store).findings(film.id()).get(0).id();
        assertThat(ask.get("/finding/" + id).body()).contains("cannot be played");
    }
}
