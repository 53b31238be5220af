/** Draws the figures of the project's definitions from scenes of the library: a scene's true tracks in, SVG files out. */
package floorgauge.eval.figures;
