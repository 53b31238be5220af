/**
 * The standards a team is held to: every threshold that is a coach's choice, with its unit, its range and its default, and
 * the reader of the standards file. Text comes in from the caller; nothing here opens a file.
 */
package floorgauge.events.standards;
