/**
 * What changes over the weeks: observations of one figure go in, each with its player or pair, role, possession and day; means
 * with intervals, shrunk toward the team's mean, and slopes with a test come out. Knows no film, no store and no clock.
 */
package floorgauge.events.trend;
