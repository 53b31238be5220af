/**
 * Screens: candidates by geometry, what came of each, its kind, its quality and the flags raised on it. Roles: screener S,
 * user U who runs off the screen, U's defender D, S's defender E.
 */
package floorgauge.events.screen;
