package floorgauge.app.command;

import floorgauge.court.failure.MendableException;
import java.io.PrintWriter;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Turns what went wrong into a line on the error stream and an exit code. */
final class FailureReport {

    /** Line breaks and other control characters, which would break a message out of its one line. */
    private static final Pattern CONTROL = Pattern.compile("[\\p{Cntrl}\\u2028\\u2029]+");

    private FailureReport() {}

    /** The message on one line. */
    static String oneLine(String message) {
        return CONTROL.matcher(message).replaceAll(" ").strip();
    }

    /** A wrong option or argument: one line that points to the help. */
    static int badUsage(ParameterException failure, String[] arguments) {
        CommandLine command = failure.getCommandLine();
        print(
                command.getErr(),
                failure.getMessage() + meant(failure) + " (see "
                        + command.getCommandSpec().qualifiedName() + " --help)");
        return ExitCode.MENDABLE;
    }

    /** The command or option whose name is nearest to a misspelt one. */
    private static String meant(ParameterException failure) {
        return failure instanceof UnmatchedArgumentException unmatched
                ? unmatched.getSuggestions().stream()
                        .findFirst()
                        .map(word -> "; did you mean " + word + "?")
                        .orElse("")
                : "";
    }

    /** One line for what the user can mend, the stack trace for a bug. */
    static int failed(Exception failure, CommandLine command, ParseResult parsed) {
        if (failure instanceof MendableException) {
            print(command.getErr(), failure.getMessage());
            return ExitCode.MENDABLE;
        }
        print(command.getErr(), "this is a bug in floorgauge; please report it with the lines below");
        failure.printStackTrace(command.getErr());
        command.getErr().flush();
        return ExitCode.BUG;
    }

    private static void print(PrintWriter to, String message) {
        to.println("floorgauge: " + oneLine(message));
        to.flush();
    }
}
