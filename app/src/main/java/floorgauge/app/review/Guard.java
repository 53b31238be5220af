package floorgauge.app.review;

import io.javalin.http.Context;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Who may ask the server for what. Requests must name this host (so that no other site's name can be pointed at the
 * loopback), changes must come from this page, and beyond the loopback every request needs a token. What is refused is
 * logged in one line.
 */
final class Guard {

    private static final Logger LOG = LoggerFactory.getLogger(Guard.class);
    private static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "[::1]");
    private static final String COOKIE = "floorgauge-token";
    private static final Pattern UNPRINTABLE = Pattern.compile("[^\\x20-\\x7e]");
    private static final int LONGEST_LOGGED = 120;

    /** No script, style, frame or address but this server's own; nothing may frame the page. */
    private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self';"
            + " media-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private final Set<String> hosts;
    private final Optional<String> token;

    /**
     * @param names beyond the loopback by which the server may be called, lower case
     * @param token that requests must carry; empty on the loopback alone
     */
    Guard(Set<String> names, Optional<String> token) {
        this.hosts = names;
        this.token = token;
    }

    /** A request that is refused. */
    static final class Refused extends RuntimeException {

        private static final long serialVersionUID = 1;
        private final int status;

        Refused(int status, String message) {
            super(message);
            this.status = status;
        }

        int status() {
            return status;
        }
    }

    /** @throws Refused where the request may not be answered */
    void check(Context request) {
        headers(request);
        host(request);
        boolean changes = !request.method().name().equals("GET")
                && !request.method().name().equals("HEAD");
        if (changes) {
            origin(request);
        }
        token.ifPresent(word -> token(request, word));
    }

    private static void headers(Context request) {
        request.header("Content-Security-Policy", POLICY);
        request.header("X-Content-Type-Options", "nosniff");
        request.header("Referrer-Policy", "no-referrer");
        request.header("Cross-Origin-Opener-Policy", "same-origin");
        request.header("Cross-Origin-Resource-Policy", "same-origin");
        request.header("Cache-Control", "no-store");
    }

    private void host(Context request) {
        String host = request.req().getHeader("Host");
        if (host == null || !isOurs(host)) {
            throw new Refused(421, "the request named another host");
        }
    }

    private boolean isOurs(String hostAndPort) {
        String name = hostAndPort.toLowerCase(Locale.ROOT).replaceFirst(":\\d+$", "");
        return LOOPBACK.contains(name) || hosts.contains(name);
    }

    /** A change must come from a page of this very host and port, as JSON, which no form of another site can send. */
    private static void origin(Context request) {
        String origin = request.req().getHeader("Origin");
        String site = request.req().getHeader("Sec-Fetch-Site");
        if (origin == null || !sameHost(origin, request.req().getHeader("Host"))) {
            throw new Refused(403, "the change came from another page");
        }
        if (site != null && !site.equals("same-origin")) {
            throw new Refused(403, "the change came from another site");
        }
        String type = request.req().getContentType();
        if (type == null || !type.toLowerCase(Locale.ROOT).startsWith("application/json")) {
            throw new Refused(415, "changes are sent as JSON");
        }
    }

    private static boolean sameHost(String origin, String host) {
        try {
            return host.equalsIgnoreCase(URI.create(origin).getRawAuthority());
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    private static void token(Context request, String word) {
        String given = request.queryParam("token");
        if (given != null && same(given, word)) {
            request.res().addHeader("Set-Cookie", COOKIE + "=" + word + "; HttpOnly; SameSite=Strict; Path=/");
            return;
        }
        String kept = request.cookie(COOKIE);
        if (kept == null || !same(kept, word)) {
            throw new Refused(401, "the token is missing; open the address that the program printed");
        }
    }

    /** Takes as long for a near miss as for a far one. */
    private static boolean same(String given, String word) {
        return MessageDigest.isEqual(given.getBytes(StandardCharsets.UTF_8), word.getBytes(StandardCharsets.UTF_8));
    }

    /** Says in one line what was refused. */
    static void log(Context request, int status, String why) {
        String what = request.method().name() + " " + request.path();
        String safe = UNPRINTABLE.matcher(what).replaceAll("?");
        LOG.warn(
                "refused ({}): {}: {}",
                status,
                safe.length() > LONGEST_LOGGED ? safe.substring(0, LONGEST_LOGGED) + "…" : safe,
                why);
    }
}
