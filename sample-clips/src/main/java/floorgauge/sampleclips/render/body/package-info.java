/**
 * People's bodies: proportions, where the feet are planted, the skeleton at an instant, and the skin and clothes around it.
 * States of a scene in, triangles in the court frame out.
 */
package floorgauge.sampleclips.render.body;
