/**
 * The sheet: one self-contained page a film, read from top to bottom on the screen and printed as it stands. A measured
 * film and the pictures of its decisive frames flow in, HTML flows out.
 */
package floorgauge.app.sheet;
