package floorgauge.app.command;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command above all others; says what there is when called alone. */
@Command(
        name = "floorgauge",
        mixinStandardHelpOptions = true,
        versionProvider = BuildVersion.class,
        description = "Measures half-court basketball film: screens and spacing, with errors and pictures.",
        subcommands = {
            MeasureCommand.class,
            CourtCommand.class,
            RenderCommand.class,
            ScoreCommand.class,
            ReviewCommand.class,
            ExportCommand.class,
            PrintCommand.class,
        })
public final class FloorgaugeCommand implements Runnable {

    @Spec
    private CommandSpec spec;

    /** The whole command line, ready to execute. */
    public static CommandLine commandLine() {
        return new CommandLine(new FloorgaugeCommand())
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setUsageHelpAutoWidth(true)
                .setParameterExceptionHandler(FailureReport::badUsage)
                .setExecutionExceptionHandler(FailureReport::failed);
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "say what to do: floorgauge measure FILM");
    }
}
