/**
 * Draws what was measured as a coach would on paper: possessions and findings go in, SVG comes out. Attackers are numbers in
 * circles, defenders crosses with numbers; a cut is a solid line, a pass dashed, a dribble a zigzag, a screen a bar across the end of the
 * way, a handoff two short bars; steps are numbered. Line work in one ink that holds at 6 cm width in black and white. A unit of
 * every drawing is a millimetre at that width.
 */
package floorgauge.events.diagram;
