/**
 * The empty hall as a static camera sees it, and what moves before it. In: the film, read once beforehand. Out: for any
 * frame the share of a box that differs from the empty hall, and the regions that differ. A camera that moves has no
 * background, and says so.
 */
package floorgauge.vision.background;
