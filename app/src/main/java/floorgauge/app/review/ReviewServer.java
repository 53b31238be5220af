package floorgauge.app.review;

import floorgauge.app.chain.LightCopies;
import floorgauge.app.store.Store;
import floorgauge.court.failure.MendableException;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The server of the review page. Every request is checked by {@link Guard} before anything else looks at it. */
public final class ReviewServer implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(ReviewServer.class);
    private static final int MOST_REQUEST_BYTES = 64 * 1024;
    private static final int MOST_HEADER_BYTES = 8 * 1024;
    private static final int IDLE_MILLISECONDS = 30_000;
    private static final int MOST_LOGGED = 200;

    private final Settings settings;
    private final Room room;
    private final PageRoutes pages;
    private final Guard guard;
    private final Javalin javalin;
    private final AtomicReference<String> making = new AtomicReference<>("");

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

    public ReviewServer(Store store, Settings settings) {
        this.settings = settings;
        ShownFilms shown = new ShownFilms(new LightCopies(settings.folder().resolve("copies")));
        this.room = Room.of(store, shown, settings.folder());
        this.pages = new PageRoutes(room, making::get);
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
        room.films().newest().ifPresent(pages::sheet);
    }

    /** A line on every sheet about what is still being made; blank for none. */
    public void say(String line) {
        making.set(line);
    }

    /**
     * Makes copies of the films that browsers cannot play, one after the other, on a thread of its own that ends with the
     * program. Sheets say which is being made.
     *
     * @param problems takes a line for each film that cannot be copied
     * @return the thread, to be waited for
     */
    public Thread prepareFilms(Consumer<String> problems) {
        Thread maker = new Thread(
                () -> {
                    new FilmPreparation(room.films(), room.shown()).run(this::say, problems);
                },
                "light-copies");
        maker.setDaemon(true);
        maker.start();
        return maker;
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
        pages.add(config.routes);
        new DataRoutes(room).add(config.routes);
        new VerdictRoutes(room).add(config.routes);
        new DeskRoutes(room).add(config.routes);
        failures(config.routes);
    }

    private void before(Context request) {
        guard.check(request);
        boolean read = room.store().setting(DeskRoutes.CONSENT).isPresent();
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

    private static void failures(RoutesConfig routes) {
        routes.exception(Guard.Refused.class, (e, r) -> sorry(r, e.status(), e.getMessage()));
        routes.exception(IllegalArgumentException.class, (e, r) -> sorry(r, 400, e.getMessage()));
        routes.exception(MendableException.class, (e, r) -> sorry(r, 409, e.getMessage()));
        routes.exception(
                HttpResponseException.class, (e, r) -> sorry(r, e.getStatus(), "the request was not understood"));
        routes.exception(Exception.class, (e, r) -> {
            LOG.error("a request failed", e);
            sorry(r, 500, "this is a bug in floorgauge; its log says more");
        });
        routes.error(404, r -> {
            if (r.resultInputStream() == null) {
                sorry(r, 404, "there is no such page");
            }
        });
    }

    private static void sorry(Context request, int status, String why) {
        String said = why == null || why.isBlank() ? "the request was not understood" : why;
        if (status < 500) {
            Guard.log(request, status, said.length() > MOST_LOGGED ? said.substring(0, MOST_LOGGED) : said);
        }
        request.status(status);
        if (request.path().startsWith("/do/") || request.path().startsWith("/data/")) {
            request.contentType("application/json")
                    .result(Requests.object().put("error", said).toString());
        } else {
            request.html(OtherPages.sorry(status, said));
        }
    }
}
