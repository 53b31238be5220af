/**
 * What events hands to app and eval: findings as plain records, immutable and validated. Times are the film's presentation
 * times in seconds, floor points are in the court frame, ids are the film's track ids.
 */
package floorgauge.events.finding;
