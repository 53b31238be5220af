/**
 * Jersey numbers. In: a frame and the poses of the people in it, then the looks of one track. Out: torsos cut upright, as
 * {@link floorgauge.vision.network.NumberReader} wants them, and for a track the number its looks agree on, with its
 * probability. A number is a suggestion of who it is, no more.
 */
package floorgauge.vision.number;
