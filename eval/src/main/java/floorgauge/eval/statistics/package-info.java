/**
 * Statistics that every score shares: ratios, bootstrap intervals by clip, paired comparison, agreement between graders,
 * rank correlation. Samples go in as plain numbers, estimates with intervals come out. Every random draw comes from a seeded
 * generator, so that the same samples give the same interval.
 */
package floorgauge.eval.statistics;
