/**
 * Actions that a team means to run: scripts in, and how a possession's findings agree with them out. A script names steps and roles;
 * alignment finds who had which role, which steps were done, and the first that broke.
 */
package floorgauge.events.script;
