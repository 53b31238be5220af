/**
 * Paint in the picture: in come frames of a static camera; out come the background without the people, ridge points with
 * sub-pixel positions and colours, straight segments, and maps that say how near the next paint of a direction is.
 * Pixels are those of the working picture. Nothing here knows a court.
 */
package floorgauge.court.lines;
