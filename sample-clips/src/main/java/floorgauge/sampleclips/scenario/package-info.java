/**
 * Scenarios: a short YAML in the trade's words goes in, a {@link floorgauge.sampleclips.scene.Scene} comes out. Reading
 * (file, line and what was expected in each error) is apart from choreography (steps, guarding, ball), which moves bodies
 * with {@link floorgauge.sampleclips.movement}.
 */
package floorgauge.sampleclips.scenario;
