/**
 * What happens on the floor at any instant: the border between the scenario side, which makes it, and the renderer, which
 * draws it. Court frame, metres, seconds.
 */
package floorgauge.sampleclips.scene;
