/**
 * Films with a known truth, measured from their pictures: held-out scenes that are rendered on demand, and the real gym clip. A
 * film goes in; the court, tracks, poses, ball and findings come out beside what is true of them, stage by stage.
 */
package floorgauge.eval.film;
