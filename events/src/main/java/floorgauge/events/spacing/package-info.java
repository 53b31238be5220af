/** How the attackers share the floor: distances, hull, lane, corners, help; crowded, collapsed and stalled. */
package floorgauge.events.spacing;
