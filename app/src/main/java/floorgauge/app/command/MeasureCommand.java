package floorgauge.app.command;

import floorgauge.app.batch.FilmList;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Measures films and writes a folder of results for each. */
@Command(
        name = "measure",
        mixinStandardHelpOptions = true,
        versionProvider = BuildVersion.class,
        description = "Measures films and writes a folder of results for each.")
final class MeasureCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILM_OR_FOLDER", arity = "1..*", description = "Films, or folders that hold films.")
    private List<Path> inputs;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "findings",
            description = "Folder to write into, one folder a film; made if need be (default: ${DEFAULT-VALUE}).")
    private Path out;

    @Override
    public Integer call() {
        FilmList films = FilmList.of(inputs);
        films.problems().forEach(problem -> spec.commandLine().getErr().println("floorgauge: " + problem));
        films.films().forEach(film -> spec.commandLine().getOut().println(film));
        return films.films().isEmpty() ? ExitCode.MENDABLE : ExitCode.DONE;
    }
}
