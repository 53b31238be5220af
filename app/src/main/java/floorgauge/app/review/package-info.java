/**
 * The review page: a server on the analyst's own machine that shows what was measured and takes verdicts. Rows of the
 * store and tracks flow in, pages and JSON flow out; verdicts, players and settings come back. Everything a browser loads
 * comes from this server.
 */
package floorgauge.app.review;
