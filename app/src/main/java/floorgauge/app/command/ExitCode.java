package floorgauge.app.command;

/** What the program tells the shell. */
final class ExitCode {

    /** Everything asked for was done, or was done already. */
    static final int DONE = 0;
    /** A bug; the stack trace was printed. */
    static final int BUG = 1;
    /** Something that the user can mend; one line says what. */
    static final int MENDABLE = 2;

    private ExitCode() {}
}
