/**
 * The demo season: eight weeks of short practices of an invented club, played by the scenario library, measured by the
 * same code as film, and marked as simulated. Scenarios flow in, results folders and store rows flow out.
 */
package floorgauge.app.season;
