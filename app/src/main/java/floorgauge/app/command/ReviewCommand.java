package floorgauge.app.command;

import floorgauge.app.result.ResultPlaces;
import floorgauge.app.review.Desk;
import floorgauge.app.review.ReviewServer;
import floorgauge.app.season.DemoSeason;
import floorgauge.app.store.Store;
import floorgauge.court.failure.MendableException;
import java.io.PrintWriter;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Opens the review page on this machine. */
@Command(
        name = "review",
        mixinStandardHelpOptions = true,
        versionProvider = BuildVersion.class,
        description =
                "Opens the page on which the night's findings are judged; without results it shows a demo season.")
final class ReviewCommand implements Callable<Integer> {

    private static final String USUAL_RESULTS = "findings";
    private static final int TOKEN_BYTES = 16;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "RESULTS",
            arity = "0..*",
            description = "Folders that measure wrote (default: findings, where there is one).")
    private List<Path> results = List.of();

    @Option(
            names = "--films",
            paramLabel = "DIR",
            description = "Where the films lie; may be given several times (default: beside the results).")
    private List<Path> films = List.of();

    @Option(
            names = "--season",
            paramLabel = "DIR",
            defaultValue = "season",
            description = "Folder for the store and what the page writes (default: ${DEFAULT-VALUE}).")
    private Path season;

    @Option(
            names = "--store",
            paramLabel = "URL",
            description = "A PostgreSQL database instead of the file in the season's folder.")
    private String storeUrl;

    @Option(names = "--port", paramLabel = "N", defaultValue = "0", description = "Port (default: a free one).")
    private int port;

    @Option(
            names = "--host",
            paramLabel = "ADDRESS",
            defaultValue = "127.0.0.1",
            description = "Address to listen on (default: this machine alone).")
    private String host;

    @Option(names = "--demo", description = "Show the demo season even where there are results.")
    private boolean demo;

    @Option(names = "--backup", paramLabel = "FILE", description = "Copy the store into a file, and end.")
    private Path backup;

    @Override
    public Integer call() {
        if (port < 0 || port > 65_535) {
            throw new MendableException("--port " + port + ": expected 0 to 65535");
        }
        List<Path> folders = folders();
        // Before a store is made for them.
        folders.forEach(ResultPlaces::below);
        boolean own = !demo && (!folders.isEmpty() || storeUrl != null || Files.exists(season.resolve("season.db")));
        if (backup != null && storeUrl == null && !own && !demo) {
            throw new MendableException("nothing is kept in " + season
                    + " yet, so there is nothing to back up; name the season's folder with --season");
        }
        Store store = own ? ownStore() : Store.open(season.resolve("demo").resolve("demo.db"));
        if (backup != null) {
            store.backUp(backup);
            say("copied the store to " + backup);
            return ExitCode.DONE;
        }
        if (own) {
            Desk desk = new Desk(store, filmFolders(folders));
            folders.forEach(f -> desk.lay(f, this::complain));
        }
        return serve(store, own);
    }

    private Store ownStore() {
        return storeUrl == null ? Store.open(season.resolve("season.db")) : Store.open(storeUrl);
    }

    private List<Path> folders() {
        Path usual = Path.of(USUAL_RESULTS);
        return results.isEmpty() && Files.isDirectory(usual) ? List.of(usual) : results;
    }

    private List<Path> filmFolders(List<Path> folders) {
        List<Path> all = new ArrayList<>(films);
        if (films.isEmpty()) {
            folders.forEach(f ->
                    all.add(Optional.ofNullable(f.toAbsolutePath().normalize().getParent())
                            .orElse(f)));
        }
        for (Path folder : films) {
            if (!Files.isDirectory(folder)) {
                throw new MendableException("--films " + folder + ": no such folder");
            }
        }
        return all;
    }

    private Integer serve(Store store, boolean own) {
        boolean loopback = isLoopback();
        Optional<String> token = loopback ? Optional.empty() : Optional.of(token());
        Set<String> names = loopback ? Set.of() : Set.of(host.toLowerCase(Locale.ROOT));
        Path folder = own ? season : season.resolve("demo");
        DemoSeason demoSeason = new DemoSeason(store, season.resolve("demo").resolve("results"));
        if (!own) {
            demoSeason.makeNewest();
        }
        try (ReviewServer server =
                new ReviewServer(store, new ReviewServer.Settings(host, port, names, token, folder)).start()) {
            server.warmUp();
            say("the review page is at http://" + (loopback ? "127.0.0.1" : host) + ":" + server.port() + "/"
                    + token.map(t -> "?token=" + t).orElse(""));
            if (!loopback) {
                complain("others on the network can reach this page; it is not encrypted: put a proxy with TLS in front"
                        + " of it, and give the address with its token to nobody else");
            }
            if (own) {
                server.prepareFilms(this::complain);
            }
            say(own ? "stop it with Ctrl+C" : "this is the demo season of an invented club; stop it with Ctrl+C");
            if (!own) {
                demoSeason.makeOthers(made -> server.say(
                        made == DemoSeason.practices()
                                ? ""
                                : "The demo season is still being played: " + made + " of " + DemoSeason.practices()
                                        + " practices are there."));
            }
            new CountDownLatch(1).await();
            return ExitCode.DONE;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return ExitCode.DONE;
        }
    }

    private boolean isLoopback() {
        try {
            return InetAddress.getByName(host).isLoopbackAddress();
        } catch (UnknownHostException e) {
            throw new MendableException("--host " + host + " is no address of this machine", e);
        }
    }

    private static String token() {
        byte[] bytes = new byte[TOKEN_BYTES];
        new SecureRandom().nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    private void say(String line) {
        PrintWriter out = spec.commandLine().getOut();
        out.println(line);
        out.flush();
    }

    private void complain(String line) {
        PrintWriter err = spec.commandLine().getErr();
        err.println("floorgauge: " + FailureReport.oneLine(line));
        err.flush();
    }
}
