/**
 * What one film leads to, and the files that carry it: {@code findings.json}, {@code tracks.parquet},
 * {@code tracks.mot.txt}. Values flow in from events and vision; files flow out. The same values give the same bytes.
 */
package floorgauge.app.result;
