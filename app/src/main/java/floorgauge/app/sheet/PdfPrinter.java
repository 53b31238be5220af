package floorgauge.app.sheet;

import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * Prints a page to PDF with a browser of the Chromium family that is installed: what the coach sees on the screen is what comes out, which no library
 * for HTML in Java does for the styles used here. The browser gets a folder of its own, and no address but the page's. PDF files
 * carry the browser's version and the time, so they are not the same bytes each time.
 */
public final class PdfPrinter {

    private static final List<String> PROGRAMS = List.of(
            "chromium",
            "chromium-browser",
            "google-chrome",
            "google-chrome-stable",
            "microsoft-edge",
            "msedge",
            "chrome");

    private static final List<String> MAC = List.of(
            "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
            "/Applications/Chromium.app/Contents/MacOS/Chromium",
            "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge");

    private static final List<String> WINDOWS =
            List.of("Google\\Chrome\\Application\\chrome.exe", "Microsoft\\Edge\\Application\\msedge.exe");

    private static final long MOST_SECONDS = 120;
    private static final byte[] HEAD = "%PDF-".getBytes(StandardCharsets.US_ASCII);

    private final Path browser;

    private PdfPrinter(Path browser) {
        this.browser = browser;
    }

    /**
     * Finds a browser.
     *
     * @param named the one asked for
     * @throws MendableException where there is none
     */
    public static PdfPrinter with(Optional<Path> named) {
        if (named.isPresent()) {
            if (!Files.isExecutable(named.get())) {
                throw new MendableException(
                        "no program that can be run: " + named.get() + "; name a browser's program file");
            }
            return new PdfPrinter(named.get());
        }
        return candidates(System.getenv())
                .filter(Files::isExecutable)
                .filter(Files::isRegularFile)
                .findFirst()
                .map(PdfPrinter::new)
                .orElseThrow(
                        () -> new MendableException("no Chrome, Chromium or Edge was found to print with; name one with"
                                + " --browser, or open the page in any browser and print it there"));
    }

    private static Stream<Path> candidates(Map<String, String> environment) {
        List<Path> places = new ArrayList<>();
        String path = environment.getOrDefault("PATH", "");
        for (String folder : path.split(java.io.File.pathSeparator)) {
            for (String program : PROGRAMS) {
                places.add(Path.of(folder, program));
            }
        }
        MAC.forEach(file -> places.add(Path.of(file)));
        for (String root : List.of("ProgramFiles", "ProgramFiles(x86)", "LOCALAPPDATA")) {
            String folder = environment.get(root);
            if (folder != null) {
                WINDOWS.forEach(file -> places.add(Path.of(folder, file.split("\\\\"))));
            }
        }
        return places.stream();
    }

    /**
     * Prints.
     *
     * @param page an HTML file
     * @param pdf written anew, moved to its place when it is whole
     * @throws MendableException where the browser fails or the file cannot be written
     */
    public void print(Path page, Path pdf) {
        Path own = null;
        try {
            own = Files.createTempDirectory("floorgauge-print");
            Path made = own.resolve("page.pdf");
            run(page, made, own);
            requirePdf(made);
            Path partial = pdf.resolveSibling("." + pdf.getFileName() + ".partial");
            Files.copy(made, partial, StandardCopyOption.REPLACE_EXISTING);
            Files.move(partial, pdf, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw new MendableException(
                    "cannot print " + page + " to " + pdf + " with " + browser + ": " + e.getMessage()
                            + "; open the page in a browser and print it there",
                    e);
        } finally {
            deleteTree(own);
        }
    }

    private void run(Path page, Path pdf, Path own) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                browser.toString(),
                "--headless",
                "--disable-gpu",
                "--no-first-run",
                "--disable-extensions",
                "--disable-background-networking",
                "--disable-component-update",
                "--host-resolver-rules=MAP * ~NOTFOUND",
                "--user-data-dir=" + own.resolve("profile"),
                "--no-pdf-header-footer",
                "--print-to-pdf=" + pdf));
        if (System.getProperty("user.name", "").equals("root")
                && System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("linux")) {
            // The browser refuses to start its sandbox as the system's own user, as in containers; the page is ours and
            // runs nothing.
            command.add("--no-sandbox");
        }
        command.add(page.toAbsolutePath().normalize().toUri().toString());
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(own.resolve("browser.log").toFile())
                .start();
        try {
            if (!process.waitFor(MOST_SECONDS, TimeUnit.SECONDS)) {
                throw new IOException("the browser did not finish within " + MOST_SECONDS + " s");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        } finally {
            process.destroyForcibly();
        }
        if (process.exitValue() != 0) {
            throw new IOException("the browser ended with exit code " + process.exitValue());
        }
    }

    private static void requirePdf(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IOException("the browser wrote nothing");
        }
        byte[] head = new byte[HEAD.length];
        try (var in = Files.newInputStream(file)) {
            if (in.readNBytes(head, 0, head.length) < head.length || !Arrays.equals(head, HEAD)) {
                throw new IOException("the browser wrote something else than PDF");
            }
        }
    }

    private static void deleteTree(Path tree) {
        if (tree == null) {
            return;
        }
        try (Stream<Path> walk = Files.walk(tree)) {
            for (Path file : walk.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            // The browser may still hold a file of its folder for a moment; the system clears its temporary files.
        }
    }
}
