/**
 * The store: films, possessions, findings, players and what the analyst decided about them. Results folders flow in, rows
 * flow out to the page and to exports. SQLite by default, PostgreSQL by a URL, with one text of SQL. Tracks stay in the
 * results folders as Parquet.
 */
package floorgauge.app.store;
