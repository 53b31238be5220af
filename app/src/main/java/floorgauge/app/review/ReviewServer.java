package floorgauge.app.review;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import floorgauge.app.chain.LightCopies;
import floorgauge.app.drawing.Svg;
import floorgauge.app.export.Cut;
import floorgauge.app.export.ExportFolder;
import floorgauge.app.export.ExportKind;
import floorgauge.app.export.ExportOrder;
import floorgauge.app.export.FilmChoice;
import floorgauge.app.export.FilmSearch;
import floorgauge.app.export.MeasuredFolder;
import floorgauge.app.store.Films;
import floorgauge.app.store.Kept;
import floorgauge.app.store.LabelFile;
import floorgauge.app.store.Notes;
import floorgauge.app.store.Player;
import floorgauge.app.store.Roster;
import floorgauge.app.store.SeasonFigures;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.StoredPossession;
import floorgauge.app.store.StoredTrack;
import floorgauge.app.store.Subject;
import floorgauge.app.store.Verdict;
import floorgauge.app.store.Verdicts;
import floorgauge.court.failure.MendableException;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.sampleclips.labels.LabelWriter;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The server of the review page. Every request is checked by {@link Guard} before anything else looks at it. */
public final class ReviewServer implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(ReviewServer.class);
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int MOST_REQUEST_BYTES = 64 * 1024;
    private static final int MOST_HEADER_BYTES = 8 * 1024;
    private static final int IDLE_MILLISECONDS = 30_000;
    private static final String CONSENT = "consent";
    private static final String KEYS = "keys";
    private static final int LAST_FINDINGS = 8;
    private static final double CLIP_ROOM_SECONDS = 2;

    private final Settings settings;
    private final Store store;
    private final Films films;
    private final Verdicts verdicts;
    private final Roster roster;
    private final Drawings drawings;
    private final Notes notes;
    private final Guard guard;
    private final ShownFilms shown;
    private final Javalin javalin;
    private final AtomicReference<String> season = new AtomicReference<>("");
    private final AtomicReference<Trended> trended = new AtomicReference<>();

    /**
     * How it is run.
     *
     * @param host to listen on
     * @param port to listen on; 0 for a free one
     * @param names beyond the loopback by which it may be called, lower case
     * @param token that requests must carry; empty on the loopback alone
     * @param folder that label files, clips and copies of films are written into
     */
    public record Settings(String host, int port, Set<String> names, Optional<String> token, Path folder) {

        public Settings {
            names = Set.copyOf(names);
        }
    }

    /** Trends with what they were made from. */
    private record Trended(String stamp, TrendsPage page) {}

    public ReviewServer(Store store, Settings settings) {
        this.settings = settings;
        this.store = store;
        this.films = new Films(store);
        this.verdicts = new Verdicts(store);
        this.roster = new Roster(store);
        this.notes = new Notes(store);
        this.drawings = new Drawings(films, new Kept(store));
        this.shown = new ShownFilms(new LightCopies(settings.folder().resolve("copies")));
        this.guard = new Guard(settings.names(), settings.token());
        this.javalin = Javalin.create(this::configure);
    }

    /** Starts it. @throws MendableException where the port is taken, or the host not this machine's */
    public ReviewServer start() {
        try {
            javalin.start(settings.host(), settings.port());
        } catch (io.javalin.util.JavalinBindException e) {
            throw new MendableException(
                    "cannot listen on " + settings.host() + " port " + settings.port()
                            + "; name another --port, or an address of this machine as --host",
                    e);
        }
        return this;
    }

    public int port() {
        return javalin.port();
    }

    /** Draws the newest sheet once, so that the analyst need not wait for its drawings. */
    public void warmUp() {
        films.newest().ifPresent(this::sheet);
    }

    /** A line on every sheet about what is still being made; blank for none. */
    public void say(String line) {
        season.set(line);
    }

    @Override
    public void close() {
        javalin.stop();
    }

    private void configure(JavalinConfig config) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.http.maxRequestSize = MOST_REQUEST_BYTES;
        config.jetty.modifyHttpConfiguration(http -> {
            http.setRequestHeaderSize(MOST_HEADER_BYTES);
            http.setSendServerVersion(false);
            http.setIdleTimeout(IDLE_MILLISECONDS);
        });
        config.routes.before(this::before);
        pages(config);
        data(config);
        changes(config);
        failures(config);
    }

    private void before(Context request) {
        guard.check(request);
        boolean read = store.setting(CONSENT).isPresent();
        String path = request.path();
        boolean free = path.equals("/before")
                || path.startsWith("/page/")
                || path.equals("/do/agree")
                || path.equals("/data/keys");
        if (!read && !free) {
            if (request.method().name().equals("GET") && !path.startsWith("/data/") && !path.startsWith("/film/")) {
                request.redirect("/before");
                request.skipRemainingHandlers();
            } else {
                throw new Guard.Refused(403, "read the notice first");
            }
        }
    }

    private void pages(JavalinConfig config) {
        config.routes.get("/page/uplot/{name}", r -> Assets.answer(r, "uplot/" + r.pathParam("name")));
        config.routes.get("/page/{name}", r -> Assets.answer(r, r.pathParam("name")));
        config.routes.get("/before", r -> r.html(OtherPages.before()));
        config.routes.get("/", this::newest);
        config.routes.get("/practices", r -> r.html(OtherPages.practices(films.all())));
        config.routes.get("/practice/{film}", r -> r.html(sheet(film(r))));
        config.routes.get("/practice/{film}/players", r -> {
            StoredFilm film = film(r);
            r.html(new WhoPage(film, films.tracks(film.id()), roster.players()).write(roster.lost(film.id())));
        });
        config.routes.get("/practice/{film}/by-hand", r -> {
            StoredFilm film = film(r);
            List<StoredTrack> tracks = films.tracks(film.id());
            r.html(new FindingPage(film, new Names(tracks), tracks).writeEmpty());
        });
        config.routes.get("/practice/{film}/labels.json", this::labels);
        config.routes.get("/finding/{id}", this::finding);
        config.routes.get("/kept/{id}", r -> {
            Subject subject = verdicts.subject(r.pathParam("id")).orElseThrow(ReviewServer::missing);
            StoredFilm film = films.film(subject.filmId()).orElseThrow(ReviewServer::missing);
            List<StoredTrack> tracks = films.tracks(film.id());
            r.html(new FindingPage(film, new Names(tracks), tracks).write(subject));
        });
        config.routes.get("/players", r -> r.html(OtherPages.players(roster.players())));
        config.routes.get("/player/{id}", r -> r.html(playerSheet(r.pathParam("id"))));
        config.routes.get("/trends", r -> r.html(trends().write(Optional.ofNullable(r.queryParam("topic")))));
        config.routes.get(
                "/trends/marks", r -> r.html(trends().writeBehind(query(r, "topic"), query(r, "who"), day(r))));
        config.routes.get("/keys", r -> r.html(OtherPages.keys()));
    }

    private void data(JavalinConfig config) {
        config.routes.get("/film/{film}", r -> FilmBytes.answer(r.disableCompression(), shown(film(r))));
        config.routes.head("/film/{film}", r -> FilmBytes.answer(r.disableCompression(), shown(film(r))));
        config.routes.get("/data/finding/{id}", r -> {
            StoredFinding found = films.finding(r.pathParam("id")).orElseThrow(ReviewServer::missing);
            StoredFilm film = films.film(found.filmId()).orElseThrow(ReviewServer::missing);
            json(
                    r,
                    FindingData.of(
                            film,
                            possession(found),
                            found.finding(),
                            new Names(films.tracks(film.id())),
                            films.pixelToFloor(film.id()),
                            shown.of(film).isPresent()));
        });
        config.routes.get("/data/film/{film}/pictures", r -> {
            double from = number(r, "from");
            double to = number(r, "to");
            if (!(to - from <= 60)) {
                throw new IllegalArgumentException("at most a minute at once");
            }
            json(r, FindingData.pictures(film(r), from, to));
        });
        config.routes.get("/data/trends", r -> json(r, trends().data(Optional.ofNullable(r.queryParam("topic")))));
        config.routes.get("/data/keys", r -> json(r, store.setting(KEYS).orElse("{}")));
    }

    private void changes(JavalinConfig config) {
        config.routes.post("/do/agree", r -> {
            store.keep(CONSENT, java.time.Instant.now().toString());
            done(r, "agreed");
        });
        config.routes.post("/do/verdict", this::judge);
        config.routes.post("/do/take-back", r -> {
            Optional<Subject> back =
                    verdicts.takeBack(film(body(r).path("film").asText()).id());
            changed(r, back, "Taken back.", "There is no verdict to take back.");
        });
        config.routes.post("/do/give-back", r -> {
            Optional<Subject> back =
                    verdicts.giveBack(film(body(r).path("film").asText()).id());
            changed(r, back, "Given back.", "Nothing was taken back since the last verdict.");
        });
        config.routes.post("/do/player", this::keepPlayer);
        config.routes.post("/do/assign", r -> {
            JsonNode body = body(r);
            String player = body.path("player").asText();
            roster.assign(
                    film(body.path("film").asText()),
                    body.path("track").asInt(),
                    player.isEmpty() ? Optional.empty() : Optional.of(player));
            done(r, player.isEmpty() ? "Taken back." : "Kept for this film.");
        });
        config.routes.post("/do/labels", r -> {
            StoredFilm film = film(body(r).path("film").asText());
            done(r, "Written to " + writeLabels(film) + ".");
        });
        config.routes.post("/do/clip", this::clip);
        config.routes.post("/do/note", r -> {
            JsonNode body = body(r);
            notes.keep(film(body.path("film").asText()).id(), body.path("note").asText());
            done(r, "The note is kept.");
        });
        config.routes.post("/do/keys", r -> {
            store.keep(KEYS, KeySettings.checked(body(r)));
            done(r, "Kept.");
        });
    }

    private static void changed(Context request, Optional<Subject> subject, String said, String nothing) {
        ObjectNode answer = JSON.createObjectNode();
        answer.put("state", Words.verdict(subject.filter(s -> s.verdict().isPresent())));
        answer.put(
                "answer",
                subject.flatMap(Subject::verdict).map(v -> v.answer().name()).orElse(""));
        answer.put("finding", subject.flatMap(Subject::findingId).orElse(""));
        answer.put("subject", subject.map(Subject::id).orElse(""));
        answer.put("said", subject.isPresent() ? said : nothing);
        json(request, answer.toString());
    }

    private void failures(JavalinConfig config) {
        config.routes.exception(Guard.Refused.class, (e, r) -> sorry(r, e.status(), e.getMessage()));
        config.routes.exception(IllegalArgumentException.class, (e, r) -> sorry(r, 400, e.getMessage()));
        config.routes.exception(MendableException.class, (e, r) -> sorry(r, 409, e.getMessage()));
        config.routes.exception(
                HttpResponseException.class, (e, r) -> sorry(r, e.getStatus(), "the request was not understood"));
        config.routes.exception(Exception.class, (e, r) -> {
            LOG.error("a request failed", e);
            sorry(r, 500, "this is a bug in floorgauge; its log says more");
        });
        config.routes.error(404, r -> {
            if (r.resultInputStream() == null) {
                sorry(r, 404, "there is no such page");
            }
        });
    }

    private static void sorry(Context request, int status, String why) {
        String said = why == null || why.isBlank() ? "the request was not understood" : why;
        if (status < 500) {
            Guard.log(request, status, said.length() > 200 ? said.substring(0, 200) : said);
        }
        request.status(status);
        if (request.path().startsWith("/do/") || request.path().startsWith("/data/")) {
            request.contentType("application/json")
                    .result(JSON.createObjectNode().put("error", said).toString());
        } else {
            request.html(OtherPages.sorry(status, said));
        }
    }

    private static Guard.Refused missing() {
        return new Guard.Refused(404, "there is no such page");
    }

    private void newest(Context request) {
        Optional<StoredFilm> film = films.newest();
        request.html(film.isPresent() ? sheet(film.get()) : OtherPages.practices(List.of()));
    }

    private String sheet(StoredFilm film) {
        List<StoredPossession> possessions = films.possessions(film.id());
        List<StoredFinding> findings = films.findings(film.id());
        Names names = new Names(films.tracks(film.id()));
        return new SheetPage(
                        film,
                        possessions,
                        findings,
                        verdicts.ofFilm(film.id()),
                        names,
                        drawings.ofPossessions(film, possessions, findings, names),
                        films.notSeen(film.id()),
                        season.get(),
                        notes.ofFilm(film.id()).orElse(""))
                .write();
    }

    private void finding(Context request) {
        StoredFinding found = films.finding(request.pathParam("id")).orElseThrow(ReviewServer::missing);
        StoredFilm film = films.film(found.filmId()).orElseThrow(ReviewServer::missing);
        List<StoredTrack> tracks = films.tracks(film.id());
        Names names = new Names(tracks);
        StoredPossession possession = possession(found);
        request.html(new FindingPage(film, names, tracks)
                .write(
                        found,
                        possession,
                        films.findings(film.id()),
                        verdicts.ofFinding(found.id()),
                        drawings.ofFinding(film, possession, found, names),
                        shown.of(film).isPresent()));
    }

    private StoredPossession possession(StoredFinding found) {
        return films.possessions(found.filmId()).stream()
                .filter(p -> p.possession().number() == found.possession())
                .findFirst()
                .orElseThrow(ReviewServer::missing);
    }

    private String playerSheet(String id) {
        Player player = roster.player(id).orElseThrow(ReviewServer::missing);
        List<String> last = films.all().stream()
                .limit(3)
                .map(Films.Listed::film)
                .flatMap(f -> {
                    Names names = new Names(films.tracks(f.id()));
                    return Words.byCost(films.findings(f.id())).stream()
                            .filter(g -> g.finding().roles().stream()
                                    .anyMatch(h -> names.player(h.trackId())
                                            .filter(p -> p.id().equals(id))
                                            .isPresent()))
                            .map(g -> "<li><a href=\"/finding/" + g.id() + "\">"
                                    + Svg.escape(names.in(g.finding().sentence())) + "</a> <span class=\"aside\">"
                                    + Svg.escape(f.title()) + "</span></li>\n");
                })
                .limit(LAST_FINDINGS)
                .toList();
        return OtherPages.player(player, trends().sentences(id), last);
    }

    private TrendsPage trends() {
        String stamp = SeasonFigures.stamp(store);
        Trended held = trended.get();
        if (held == null || !held.stamp().equals(stamp)) {
            held = new Trended(stamp, new TrendsPage(SeasonFigures.read(store), roster.players()));
            trended.set(held);
        }
        return held.page();
    }

    private Path shown(StoredFilm film) {
        return shown.of(film).orElseThrow(ReviewServer::missing);
    }

    /** Makes copies of the films that browsers cannot play, one after the other. @param problems takes a line each */
    public void prepareFilms(Consumer<String> problems) {
        for (Films.Listed listed : films.all()) {
            try {
                shown.prepare(listed.film());
            } catch (MendableException e) {
                problems.accept(e.getMessage());
            }
        }
    }

    /** Cuts a clip of a finding out of its film, with what was measured burnt in. */
    private void clip(Context request) {
        StoredFinding found =
                films.finding(body(request).path("finding").asText()).orElseThrow(ReviewServer::missing);
        StoredFilm film = films.film(found.filmId()).orElseThrow(ReviewServer::missing);
        Path file = film.film()
                .filter(Files::isRegularFile)
                .orElseThrow(() -> new MendableException(
                        film.simulated()
                                ? "a simulated practice has no film to cut a clip from"
                                : "the film was not found; start the page with --films and its folder"));
        MeasuredFolder measured = MeasuredFolder.at(List.of(film.folder())).get(0);
        ExportFolder folder = ExportFolder.open(settings.folder().resolve("clips"));
        ExportKind.CLIPS.write(
                new ExportOrder(
                        List.of(FilmChoice.of(measured, (f, one) -> one.number() == found.number())),
                        new Cut.Room(CLIP_ROOM_SECONDS, CLIP_ROOM_SECONDS),
                        new FilmSearch(List.of(file))),
                folder);
        done(request, "The clip is in " + folder.written().get(0) + ".");
    }

    private void judge(Context request) {
        JsonNode body = body(request);
        VerdictRequest asked = new VerdictRequest(body);
        Subject judged = body.has("finding")
                ? judgeFinding(asked)
                : body.has("subject") ? judgeKept(asked) : enterByHand(asked, body);
        ObjectNode answer = JSON.createObjectNode();
        answer.put("state", Words.verdict(Optional.of(judged)));
        answer.put("answer", judged.verdict().map(v -> v.answer().name()).orElse(""));
        answer.put("subject", judged.id());
        answer.put("said", "Judged: " + Words.verdict(Optional.of(judged)) + ".");
        json(request, answer.toString());
    }

    private Subject judgeFinding(VerdictRequest asked) {
        StoredFinding found = films.finding(asked.text("finding", "")).orElseThrow(ReviewServer::missing);
        StoredFilm film = films.film(found.filmId()).orElseThrow(ReviewServer::missing);
        Finding finding = found.finding();
        VerdictRequest.Standing standing = verdicts.ofFinding(found.id())
                .flatMap(Subject::verdict)
                .map(VerdictRequest.Standing::of)
                .orElse(new VerdictRequest.Standing(
                        found.id(),
                        film.id(),
                        finding.kind(),
                        finding.label(),
                        finding.fromSeconds(),
                        finding.toSeconds(),
                        finding.roles(),
                        OptionalInt.empty(),
                        ""));
        String subject = verdicts.judge(film, found, verdict(asked, standing, film));
        return verdicts.subject(subject).orElseThrow();
    }

    private Subject judgeKept(VerdictRequest asked) {
        Subject subject = verdicts.subject(asked.text("subject", "")).orElseThrow(ReviewServer::missing);
        StoredFilm film = films.film(subject.filmId()).orElseThrow(ReviewServer::missing);
        VerdictRequest.Standing standing = subject.verdict()
                .map(VerdictRequest.Standing::of)
                .orElse(new VerdictRequest.Standing(
                        subject.id(),
                        film.id(),
                        subject.kind(),
                        subject.label(),
                        subject.fromSeconds(),
                        subject.toSeconds(),
                        subject.roles(),
                        OptionalInt.empty(),
                        ""));
        verdicts.judgeAgain(verdict(asked, standing, film));
        return verdicts.subject(subject.id()).orElseThrow();
    }

    private Subject enterByHand(VerdictRequest asked, JsonNode body) {
        StoredFilm film = film(body.path("film").asText());
        String id = "hand-"
                + UUID.nameUUIDFromBytes(asked.text("id", "").getBytes(java.nio.charset.StandardCharsets.UTF_8));
        VerdictRequest.Standing standing = new VerdictRequest.Standing(
                id, film.id(), FindingKind.SCREEN, "", 0, 0, List.of(), OptionalInt.empty(), "");
        verdicts.enter(film, verdict(asked, standing, film));
        return verdicts.subject(id).orElseThrow();
    }

    private Verdict verdict(VerdictRequest asked, VerdictRequest.Standing standing, StoredFilm film) {
        Set<Integer> tracks =
                films.tracks(film.id()).stream().map(StoredTrack::trackId).collect(Collectors.toSet());
        return asked.on(standing, tracks, film.durationSeconds());
    }

    private void keepPlayer(Context request) {
        JsonNode body = body(request);
        String id = body.path("id").asText();
        if (!id.isEmpty() && roster.player(id).isEmpty()) {
            throw new IllegalArgumentException("no such player");
        }
        roster.keep(new Player(
                id.isEmpty() ? UUID.randomUUID().toString() : id,
                body.path("name").asText(),
                body.path("number").isInt() ? OptionalInt.of(body.get("number").asInt()) : OptionalInt.empty(),
                body.path("squad").asText(),
                body.path("position").asText(),
                body.path("active").asBoolean(true)));
        done(request, "Kept.");
    }

    private void labels(Context request) {
        StoredFilm film = film(request);
        request.header("Content-Disposition", "attachment; filename=\"" + labelName(film) + "\"")
                .contentType("application/json")
                .result(LabelWriter.text(new LabelFile(store).labels(film, "analyst")));
    }

    private Path writeLabels(StoredFilm film) {
        String text = new LabelFile(store).write(film, "analyst");
        Path labels = settings.folder().resolve("labels");
        Path file = labels.resolve(labelName(film));
        Path beside = labels.resolve(labelName(film) + ".part");
        try {
            Files.createDirectories(labels);
            Files.writeString(beside, text);
            Files.move(beside, file, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new MendableException("cannot write " + file + " (" + e.getMessage() + ")", e);
        }
        return file;
    }

    /** From the film's id alone, since its name may hold anything. */
    private static String labelName(StoredFilm film) {
        return film.id() + ".labels.json";
    }

    private StoredFilm film(Context request) {
        return film(request.pathParam("film"));
    }

    private StoredFilm film(String id) {
        return films.film(id).orElseThrow(ReviewServer::missing);
    }

    private static String query(Context request, String name) {
        return Optional.ofNullable(request.queryParam(name)).orElse("");
    }

    private static double number(Context request, String name) {
        try {
            return Double.parseDouble(query(request, name));
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(name + " is a number of seconds", e);
        }
    }

    private static LocalDate day(Context request) {
        try {
            return LocalDate.parse(query(request, "day"));
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("day is a date such as 2026-11-20", e);
        }
    }

    private static JsonNode body(Context request) {
        try {
            JsonNode node = JSON.readTree(request.body());
            if (node == null || !node.isObject()) {
                throw new IllegalArgumentException("expected a JSON object");
            }
            return node;
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("the request is not JSON", e);
        }
    }

    private static void done(Context request, String said) {
        json(request, JSON.createObjectNode().put("said", said).toString());
    }

    private static void json(Context request, String text) {
        request.contentType("application/json; charset=utf-8").result(text);
    }
}
