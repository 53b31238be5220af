package floorgauge.app;

import floorgauge.app.command.FloorgaugeCommand;

/** The program's entry point. */
public final class Main {

    private Main() {}

    /** @param arguments the command line, without the program's name */
    public static void main(String[] arguments) {
        int exitCode = FloorgaugeCommand.commandLine().execute(arguments);
        System.out.flush();
        System.err.flush();
        System.exit(exitCode);
    }
}
