package floorgauge.events.diagram;

/**
 * A step's number on the drawing.
 *
 * @param number from 1
 * @param at its middle, {x, y}, millimetres
 */
record PlacedNumber(int number, double[] at) {

    static final double RADIUS = 1.4;
    static final double SIZE = 2.15;
}
