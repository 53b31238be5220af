/**
 * From frames to possessions: tracks are resampled to the uniform clock, the attacking team and the rim under attack are
 * told from where everyone stands, and the film is cut into plays that fit in memory. Everything here streams.
 */
package floorgauge.events.play;
