package floorgauge.app.command;

import floorgauge.app.export.ExportFolder;
import floorgauge.app.export.MeasuredFolder;
import floorgauge.app.export.SeasonBook;
import floorgauge.app.result.Replay;
import floorgauge.app.result.TracksWindow;
import floorgauge.app.sheet.PdfPrinter;
import floorgauge.app.sheet.PlayerNames;
import floorgauge.app.sheet.PlayerPage;
import floorgauge.app.sheet.PracticePage;
import floorgauge.app.sheet.WallFilm;
import floorgauge.events.finding.PossessionFindings;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes pages for the wall. */
@Command(
        name = "print",
        mixinStandardHelpOptions = true,
        versionProvider = BuildVersion.class,
        description = "Makes pages for the wall: one a practice, one a player, and each film's sheet, as HTML and PDF.")
final class PrintCommand implements Callable<Integer> {

    private static final int MOST_NAME = 60;

    @Spec
    private CommandSpec spec;

    @Mixin
    private MeasuredPlaces places;

    @Option(
            names = "--title",
            paramLabel = "TEXT",
            description = "What the practice is called (default: the films' names).")
    private String title;

    @Option(
            names = "--browser",
            paramLabel = "FILE",
            description = "Chrome, Chromium or Edge to make PDF with (default: the one that is installed).")
    private Path browser;

    @Option(names = "--no-pdf", description = "Write HTML alone, to print from any browser.")
    private boolean withoutPdf;

    @Override
    public Integer call() {
        List<MeasuredFolder> measured = places.measured();
        Optional<PdfPrinter> printer =
                withoutPdf ? Optional.empty() : Optional.of(PdfPrinter.with(Optional.ofNullable(browser)));
        List<WallFilm> films = measured.stream().map(PrintCommand::film).toList();
        Map<String, String> pages = new LinkedHashMap<>();
        PlayerNames names =
                SeasonBook.in(places.season()).map(book -> (PlayerNames) book).orElseGet(PlayerNames::none);
        pages.put("practice", PracticePage.of(practiceTitle(measured), films, names));
        PlayerPage.of(films, names).forEach((name, page) -> pages.put(fileName(name, pages), page));
        ExportFolder folder = places.folder();
        pages.forEach((name, page) ->
                folder.write(name + ".html", file -> Files.writeString(file, page, StandardCharsets.UTF_8)));
        for (MeasuredFolder film : measured) {
            Path sheet = film.folder().resolve("sheet.html");
            if (Files.isRegularFile(sheet)) {
                folder.write(film.name() + ".html", file -> Files.copy(sheet, file));
            }
        }
        List<Path> made = new ArrayList<>(folder.written());
        printer.ifPresent(p -> folder.written().forEach(page -> made.add(pdf(p, page))));
        MeasuredPlaces.say(made, spec.commandLine().getOut());
        return ExitCode.DONE;
    }

    private static Path pdf(PdfPrinter printer, Path page) {
        String name = page.getFileName().toString();
        Path pdf = page.resolveSibling(name.substring(0, name.length() - ".html".length()) + ".pdf");
        printer.print(page, pdf);
        return pdf;
    }

    /** Trails are not in the findings; they follow from the tracks. */
    private static WallFilm film(MeasuredFolder folder) {
        List<TracksWindow.Place> places = folder.places();
        List<PossessionFindings> possessions = folder.findings().findings().possessions().stream()
                .map(p -> new PossessionFindings(
                        p.possession(),
                        p.findings(),
                        p.spacing(),
                        Replay.of(
                                places,
                                p.possession(),
                                p.possession().fromSeconds(),
                                p.possession().toSeconds()),
                        p.notSeen()))
                .toList();
        return new WallFilm(folder.findings().film(), folder.findings().court().rules(), possessions);
    }

    private String practiceTitle(List<MeasuredFolder> measured) {
        if (title != null) {
            return title;
        }
        return measured.stream().map(MeasuredFolder::name).collect(Collectors.joining(", "));
    }

    /** Safe for every file system, and not yet taken. */
    private static String fileName(String player, Map<String, String> taken) {
        String safe = ("player " + player).replaceAll("[^\\p{L}\\p{N} -]", "").strip();
        String cut = safe.length() > MOST_NAME ? safe.substring(0, MOST_NAME) : safe;
        String name = cut;
        for (int i = 2; taken.containsKey(name); i++) {
            name = cut + " " + i;
        }
        return name;
    }
}
