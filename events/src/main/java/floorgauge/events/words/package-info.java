/** Figures and chances as a coach reads them. */
package floorgauge.events.words;
