/** A night's work: which films there are, which are done, and what became of each. */
package floorgauge.app.batch;
