/**
 * Cameras of rendered film: the lens, where it stands at any instant, and files that give real set-ups. Court frame in,
 * pixels out. Picture frame as OpenCV has it: x right, y down, the centre of the top left pixel at (0, 0).
 */
package floorgauge.sampleclips.render.camera;
