package floorgauge.app.command;

import floorgauge.app.export.Cut;
import floorgauge.app.export.ExportFolder;
import floorgauge.app.export.ExportKind;
import floorgauge.app.export.ExportOrder;
import floorgauge.app.export.FilmChoice;
import floorgauge.app.export.FilmSearch;
import floorgauge.app.export.MeasuredFolder;
import floorgauge.app.export.SeasonBook;
import floorgauge.app.sheet.PlayerNames;
import floorgauge.app.store.Verdict;
import floorgauge.events.finding.FindingKind;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Writes results in formats of other programs. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        versionProvider = BuildVersion.class,
        description = "Writes results for other programs: clips, cut lists, chapters, tables, tracks.")
final class ExportCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private MeasuredPlaces places;

    @Option(
            names = "--as",
            paramLabel = "KIND",
            required = true,
            split = ",",
            description =
                    "What to write, one or more with commas between: clips, reel, otio, edl, chapters, csv, parquet,"
                            + " json, mot, coco.")
    private List<ExportKind> kinds = List.of();

    @Option(
            names = "--films",
            paramLabel = "FILM_OR_FOLDER",
            description =
                    "Where the films themselves lie; may be given several times. Clips and the reel need them (default: the folder you are in).")
    private List<Path> films = List.of(Path.of(""));

    @Option(
            names = "--only",
            paramLabel = "KIND",
            split = ",",
            description =
                    "Findings of these kinds alone, such as weak-screen,late-pass (default: missed standards for clips,"
                            + " reel, otio and edl; everything for the rest).")
    private List<String> only = List.of();

    @Option(
            names = "--judged",
            paramLabel = "ANSWER",
            split = ",",
            description = "Findings judged so on the review page alone: right, wrong, cant-tell, unjudged.")
    private List<String> judged = List.of();

    @Option(
            names = "--before",
            paramLabel = "SECONDS",
            defaultValue = "2",
            description = "Film shown before a finding (default: ${DEFAULT-VALUE}).")
    private double before;

    @Option(
            names = "--after",
            paramLabel = "SECONDS",
            defaultValue = "2",
            description = "Film shown after a finding (default: ${DEFAULT-VALUE}).")
    private double after;

    /** Kinds that show film, and would be long with everything in them. */
    private static final Set<ExportKind> SHOWING =
            EnumSet.of(ExportKind.CLIPS, ExportKind.REEL, ExportKind.OTIO, ExportKind.EDL);

    private static final double MOST_ROOM_SECONDS = 60;

    @Override
    public Integer call() {
        requireRoom("--before", before);
        requireRoom("--after", after);
        Set<FindingKind> chosen = chosenKinds();
        Set<Optional<Verdict.Answer>> answers = answers();
        List<MeasuredFolder> measured = places.measured();
        Optional<SeasonBook> book =
                answers.isEmpty() ? SeasonBook.in(places.season()) : Optional.of(SeasonBook.require(places.season()));
        PlayerNames names = book.map(b -> (PlayerNames) b).orElseGet(PlayerNames::none);
        ExportFolder folder = places.folder();
        FilmSearch search = new FilmSearch(films);
        for (ExportKind kind : kinds) {
            ExportOrder order = new ExportOrder(
                    measured.stream()
                            .map(film -> FilmChoice.of(
                                    film,
                                    names,
                                    (f, finding) -> wanted(
                                                    kind,
                                                    chosen,
                                                    finding.finding().kind())
                                            && (answers.isEmpty()
                                                    || answers.contains(
                                                            book.orElseThrow().answer(f, finding)))))
                            .toList(),
                    new Cut.Room(before, after),
                    search);
            kind.write(order, folder);
        }
        MeasuredPlaces.say(folder.written(), spec.commandLine().getOut());
        return ExitCode.DONE;
    }

    private static boolean wanted(ExportKind kind, Set<FindingKind> chosen, FindingKind finding) {
        return chosen.isEmpty() ? finding.isFlag() || !SHOWING.contains(kind) : chosen.contains(finding);
    }

    /** Nothing stands for unjudged; nothing at all where verdicts do not matter. */
    private Set<Optional<Verdict.Answer>> answers() {
        Set<Optional<Verdict.Answer>> answers = new HashSet<>();
        for (String word : judged) {
            switch (word.strip().toLowerCase(Locale.ROOT)) {
                case "right" -> answers.add(Optional.of(Verdict.Answer.RIGHT));
                case "wrong" -> answers.add(Optional.of(Verdict.Answer.WRONG));
                case "cant-tell", "can't-tell" -> answers.add(Optional.of(Verdict.Answer.CANT_TELL));
                case "unjudged" -> answers.add(Optional.empty());
                default ->
                    throw new ParameterException(
                            spec.commandLine(),
                            "--judged takes right, wrong, cant-tell and unjudged, not '" + word + "'");
            }
        }
        return answers;
    }

    private Set<FindingKind> chosenKinds() {
        Set<FindingKind> chosen = EnumSet.noneOf(FindingKind.class);
        for (String word : only) {
            String words = word.strip().toLowerCase(Locale.ROOT).replace('-', ' ');
            chosen.add(Arrays.stream(FindingKind.values())
                    .filter(k -> k.words().equals(words))
                    .findFirst()
                    .orElseThrow(() -> new ParameterException(
                            spec.commandLine(), "unknown kind of finding '" + word + "'; there are " + kindNames())));
        }
        return chosen;
    }

    private static String kindNames() {
        return Arrays.stream(FindingKind.values())
                .map(k -> k.words().replace(' ', '-'))
                .collect(Collectors.joining(", "));
    }

    private void requireRoom(String option, double seconds) {
        if (!(seconds >= 0 && seconds <= MOST_ROOM_SECONDS)) {
            throw new ParameterException(
                    spec.commandLine(),
                    option + " must be from 0 to " + (int) MOST_ROOM_SECONDS + " s, not " + seconds);
        }
    }
}
