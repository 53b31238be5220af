/** From triangles and the empty gym to a picture: meshes, rasteriser, shadows, mirrored people, and the sensor. */
package floorgauge.sampleclips.render.picture;
