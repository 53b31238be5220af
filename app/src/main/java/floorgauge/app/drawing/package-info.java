/**
 * Measured drawings as SVG: dimension lines, the plan of the floor, frames of the film with skeletons and distances, the
 * time rule, spacing over time. Values flow in, text flows out; every drawing carries its text equivalent. What was not
 * seen is hatched, certainty is line weight, the one accent marks what lies beyond its threshold.
 *
 * <p>Style classes, the hatching {@code #hatch} and all colours belong to the page that holds the drawing.
 */
package floorgauge.app.drawing;
