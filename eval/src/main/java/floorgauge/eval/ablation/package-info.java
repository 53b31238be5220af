/**
 * What each part of the tracking is worth. In: films with truth. Out: a table of the scores with all parts, and with one switched off at
 * a time.
 */
package floorgauge.eval.ablation;
