package floorgauge.events.pass;

import floorgauge.events.play.PlayerPath;

/**
 * A stretch in which a receiver was open to whoever had the ball. Indexes are the play's.
 *
 * @param passer who had the ball
 * @param receiver who was open
 * @param open first index
 * @param close last index
 * @param openingError standard error of the opening, seconds
 * @param separation from the receiver to the nearest defender at the opening, metres
 * @param seenToOpen whether the receiver had been covered before: a shooter whom nobody guards is open all along
 */
public record OpenWindow(
        PlayerPath passer,
        PlayerPath receiver,
        int open,
        int close,
        double openingError,
        double separation,
        boolean seenToOpen) {}
