/**
 * Tracks on the floor go in; findings come out: screens, passes, cuts, windows and spacing, each with its figures, their
 * errors and a probability. Plain Java: no native library, no input or output of its own.
 *
 * <p>{@code motion} smooths tracks onto a uniform clock, {@code play} cuts them into possessions and says who attacks,
 * {@code screen}, {@code pass}, {@code cut} and {@code spacing} measure a possession, {@code finding} is what comes out.
 */
package floorgauge.events;
