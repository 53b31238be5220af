/**
 * For those who work on the rules: measures the library's scenes on development seeds and prints every miss and false alarm
 * with what the label says and what was measured. Scenes go in, a listing comes out; nothing here scores for the record.
 */
package floorgauge.eval.walk;
