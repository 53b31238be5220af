package floorgauge.app.command;

import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine;

/**
 * One run of the command line inside the test, with what it printed.
 *
 * @param exitCode what the shell would see
 * @param out what went to the output stream
 * @param err what went to the error stream
 */
record CommandRun(int exitCode, String out, String err) {

    static CommandRun of(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine commandLine = FloorgaugeCommand.commandLine()
                .setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true));
        int exitCode = commandLine.execute(arguments);
        return new CommandRun(exitCode, out.toString(), err.toString());
    }
}
