package floorgauge.app.command;

import floorgauge.app.export.ExportFolder;
import floorgauge.app.export.MeasuredFolder;
import floorgauge.app.export.SeasonBook;
import floorgauge.app.sheet.PdfPrinter;
import floorgauge.app.sheet.PlayerNames;
import floorgauge.app.sheet.PlayerPage;
import floorgauge.app.sheet.PracticePage;
import floorgauge.app.sheet.WallFilm;
import floorgauge.events.Measurement;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.standards.Standards;
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
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
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

    @Parameters(
            paramLabel = "RESULTS",
            arity = "1..*",
            description = "Folders that measure wrote: of one film, or of many; together they are the practice.")
    private List<Path> results = List.of();

    @Option(
            names = "--out",
            paramLabel = "DIR",
            required = true,
            description = "Folder to write into; made if need be.")
    private Path out;

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

    @Option(
            names = "--season",
            paramLabel = "DIR",
            defaultValue = "season",
            description = "The season's folder, where the review page keeps who the players are (default:"
                    + " ${DEFAULT-VALUE}, where there is one).")
    private Path season;

    @Option(names = "--no-pdf", description = "Write HTML alone, to print from any browser.")
    private boolean withoutPdf;

    @Override
    public Integer call() {
        List<MeasuredFolder> measured = MeasuredFolder.at(results);
        Optional<PdfPrinter> printer =
                withoutPdf ? Optional.empty() : Optional.of(PdfPrinter.with(Optional.ofNullable(browser)));
        List<WallFilm> films = measured.stream().map(PrintCommand::film).toList();
        Map<String, String> pages = new LinkedHashMap<>();
        PlayerNames names =
                SeasonBook.in(season).map(book -> (PlayerNames) book).orElseGet(PlayerNames::none);
        pages.put("practice", PracticePage.of(practiceTitle(measured), films, names));
        PlayerPage.of(films, names).forEach((name, page) -> pages.put(fileName(name, pages), page));
        ExportFolder folder = ExportFolder.open(out);
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
        made.forEach(file -> spec.commandLine().getOut().println("wrote " + FailureReport.oneLine(file.toString())));
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
        var rules = folder.findings().court().rules();
        Findings again = Measurement.measure(folder.tracks(), rules, Standards.defaults());
        List<PossessionFindings> possessions = folder.findings().findings().possessions().stream()
                .map(p -> new PossessionFindings(
                        p.possession(),
                        p.findings(),
                        p.spacing(),
                        again.possessions().stream()
                                .filter(a -> a.possession().number()
                                        == p.possession().number())
                                .flatMap(a -> a.trails().stream())
                                .toList(),
                        p.notSeen()))
                .toList();
        return new WallFilm(folder.findings().film(), rules, possessions);
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
