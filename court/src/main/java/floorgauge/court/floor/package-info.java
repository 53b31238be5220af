/**
 * Positions on the floor and in the picture, with their uncertainty: the smallest values that cross module borders. Plain
 * Java, immutable, validated.
 *
 * <p>Court frame: origin at the centre of the court on the floor, x along the length, y across, z up, right-handed, metres.
 * Picture frame: pixels of the film as stored after its rotation flag, x right, y down, the centre of the top left pixel at
 * (0, 0).
 */
package floorgauge.court.floor;
