package floorgauge.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.failure.MendableException;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;

class FloorgaugeCommandTest {

    @Test
    void nothingTypedIsAnsweredInOneLine() {
        CommandRun run = CommandRun.of();
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"--no-such-option", "measur", "measure", "measure --no-such-option film.mp4"})
    void whatIsNotUnderstoodIsAnsweredInOneLineThatPointsToTheHelp(String typed) {
        CommandRun run = CommandRun.of(typed.split(" "));
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).startsWith("floorgauge: ").contains("--help");
    }

    @Test
    void helpNamesTheCommands() {
        CommandRun run = CommandRun.of("--help");
        assertThat(run.exitCode()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).contains("measure");
    }

    @Test
    void versionIsTheOneBuilt() {
        CommandRun run = CommandRun.of("--version");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).matches("floorgauge \\d+\\.\\d+\\.\\d+\\S*\\R");
    }

    @Test
    void whatTheUserCanMendIsOneLineEvenWhereANameHoldsALineBreak() {
        CommandRun run = failWith(new MendableException("no such file: a\nb.mp4; check the name"));
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).isEqualTo("floorgauge: no such file: a b.mp4; check the name" + System.lineSeparator());
    }

    @Test
    void aBugKeepsItsStackTrace() {
        CommandRun run = failWith(new IllegalStateException("broken"));
        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("IllegalStateException: broken").contains("\tat ");
    }

    private static CommandRun failWith(RuntimeException failure) {
        @Command(name = "failing")
        class Failing implements Runnable {
            @Override
            public void run() {
                throw failure;
            }
        }
        StringWriter err = new StringWriter();
        CommandLine commandLine = FloorgaugeCommand.commandLine();
        commandLine.addSubcommand(new Failing());
        // Handlers set on a command line reach the commands it has at that time.
        commandLine.setExecutionExceptionHandler(FailureReport::failed).setErr(new PrintWriter(err, true));
        return new CommandRun(commandLine.execute("failing"), "", err.toString());
    }
}
