/**
 * What vision hands to events, eval and app: players and ball seen in the picture and placed on the floor. Plain Java,
 * immutable, validated. Times are the film's own presentation times in seconds; floor values are in the court frame.
 */
package floorgauge.court.track;
