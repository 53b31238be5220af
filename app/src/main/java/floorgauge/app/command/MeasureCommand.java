package floorgauge.app.command;

import floorgauge.app.batch.Batch;
import floorgauge.app.batch.FilmList;
import floorgauge.app.batch.FilmMeasurer;
import floorgauge.app.batch.ResultsFolder;
import floorgauge.app.chain.ChainOptions;
import floorgauge.app.chain.MeasureChain;
import floorgauge.app.chain.TracksMeasurer;
import floorgauge.vision.network.Precision;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Measures films and writes a folder of results for each. */
@Command(
        name = "measure",
        mixinStandardHelpOptions = true,
        versionProvider = BuildVersion.class,
        description = "Measures films and writes a folder of results for each.")
final class MeasureCommand implements Callable<Integer> {

    /** The most that any rule book lets a team have on the court. */
    private static final int MOST_PLAYERS_PER_SIDE = 5;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILM_OR_FOLDER", arity = "0..*", description = "Films, or folders that hold films.")
    private List<Path> inputs = List.of();

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "findings",
            description = "Folder to write into, one folder a film; made if need be (default: ${DEFAULT-VALUE}).")
    private Path out;

    @Option(
            names = "--points",
            paramLabel = "FILE",
            description = "Court points marked in a picture of the film, where the lines do not suffice. Without it, a"
                    + " file NAME.points.yaml beside film NAME.mp4 is used.")
    private Path points;

    @Option(
            names = "--saved",
            paramLabel = "FILE",
            description = "A court saved with floorgauge court --save from another film of the same camera place. It is"
                    + " used where its lines still lie there; elsewhere the court is looked for anew.")
    private Path saved;

    @Option(
            names = "--court",
            paramLabel = "RULES",
            description =
                    "Rule book of the court: fiba, nba, ncaa or nfhs (default: the points file's, else found from the"
                            + " lines).")
    private String court;

    @Option(
            names = "--standards",
            paramLabel = "FILE",
            description = "The team's standards (default: those of the project).")
    private Path standards;

    @Option(
            names = "--script",
            paramLabel = "NAME_OR_FILE",
            description =
                    "The action that the team means to run: a shipped script by its name, a script file of your own,"
                            + " or all. May be given several times; each possession is held against the one it resembles most.")
    private List<String> scripts = List.of();

    @Option(
            names = "--tracks",
            paramLabel = "FILE",
            description =
                    "Measure these tracks instead of films: tracks.parquet of an earlier run, or MOTChallenge text"
                            + " with floor metres. Needs --court.")
    private Path tracks;

    @Option(
            names = "--frames-per-second",
            paramLabel = "N",
            defaultValue = "25",
            description = "Rate of MOTChallenge text, which carries no times (default: ${DEFAULT-VALUE}).")
    private double framesPerSecond;

    @Option(
            names = "--a-side",
            paramLabel = "N",
            description = "How many players each team has on the floor, where you know it and nobody else steps on:"
                    + " 3 for three on three (default: found from the film).")
    private Integer playersPerSide;

    @Option(
            names = "--precision",
            paramLabel = "NUMBERS",
            description =
                    "Numbers in which the networks are computed: single, or bfloat16, shorter and on some processors"
                            + " faster (default: this machine tries both once and keeps to what it chose).")
    private String precision;

    @Option(
            names = "--timings",
            description = "Say at the end how long each stage took, beside reading the films alone.")
    private boolean timings;

    @Override
    public Integer call() {
        if (inputs.isEmpty() == (tracks == null)) {
            throw new ParameterException(
                    spec.commandLine(), "name films or folders to measure, or one file with --tracks");
        }
        if (tracks != null && (playersPerSide != null || timings || precision != null)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--a-side, --precision and --timings are for films; a file of tracks has its players");
        }
        if (playersPerSide != null && (playersPerSide < 1 || playersPerSide > MOST_PLAYERS_PER_SIDE)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--a-side must be from 1 to " + MOST_PLAYERS_PER_SIDE + ", not " + playersPerSide);
        }
        ChainOptions options = new ChainOptions(
                Optional.ofNullable(points),
                Optional.ofNullable(saved),
                Optional.ofNullable(court),
                Optional.ofNullable(standards),
                playersPerSide == null ? OptionalInt.empty() : OptionalInt.of(playersPerSide),
                precision(),
                scripts);
        if (tracks != null) {
            return run(TracksMeasurer.of(options, framesPerSecond), FilmList.of(List.of(tracks)));
        }
        try (MeasureChain chain = MeasureChain.of(options)) {
            int exitCode = run(chain, FilmList.of(inputs));
            if (timings) {
                new TimingTable(chain.times())
                        .lines()
                        .forEach(spec.commandLine().getOut()::println);
            }
            return exitCode;
        }
    }

    private Optional<Precision> precision() {
        if (precision == null) {
            return Optional.empty();
        }
        for (Precision known : Precision.values()) {
            if (known.name().equalsIgnoreCase(precision)) {
                return Optional.of(known);
            }
        }
        throw new ParameterException(spec.commandLine(), "--precision must be single or bfloat16, not " + precision);
    }

    private int run(FilmMeasurer measurer, FilmList films) {
        PrintWriter err = spec.commandLine().getErr();
        films.problems().forEach(problem -> err.println("floorgauge: " + FailureReport.oneLine(problem)));
        if (films.films().isEmpty()) {
            return ExitCode.MENDABLE;
        }
        try (ResultsFolder results = ResultsFolder.open(out);
                TerminalReport report =
                        new TerminalReport(spec.commandLine().getOut(), err, System.console() != null)) {
            Batch.Outcome outcome = new Batch(measurer, results, report).run(films.films());
            if (outcome.broken() > 0) {
                return ExitCode.BUG;
            }
            return outcome.failed() > 0 || !films.problems().isEmpty() ? ExitCode.MENDABLE : ExitCode.DONE;
        }
    }
}
