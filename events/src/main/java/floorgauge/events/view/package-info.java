/** A play together with who guards whom, who has the ball, and the standards: what the measurements look at. */
package floorgauge.events.view;
