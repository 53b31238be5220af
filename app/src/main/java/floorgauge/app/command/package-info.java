/**
 * The command line: one class a command. A command checks what was typed, hands over to the packages that do the work, and
 * prints. Exit codes: 0 done, 2 for what the user can mend (one line on the error stream), 1 for a bug (stack trace).
 */
package floorgauge.app.command;
