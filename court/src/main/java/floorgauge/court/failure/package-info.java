/**
 * What the user can mend. Everything thrown from here carries a message that says what is wrong, where, and what to do;
 * the command line prints that message as one line and exits with 2. Any other exception is a bug and keeps its stack
 * trace.
 */
package floorgauge.court.failure;
