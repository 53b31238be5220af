/**
 * Rendering of whole films: a scene, a camera and a seed in; an H.264 film with its truth beside it out. Same input, same
 * frames, byte for byte.
 */
package floorgauge.sampleclips.render;
