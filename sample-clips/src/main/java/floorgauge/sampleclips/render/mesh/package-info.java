/** Triangle meshes whose topology and colours are fixed and whose vertices move. */
package floorgauge.sampleclips.render.mesh;
