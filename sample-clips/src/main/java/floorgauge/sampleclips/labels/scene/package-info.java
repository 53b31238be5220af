/**
 * The true events of a played scene, with their true figures, computed from its exact motion by the definitions of the
 * measurements. Written apart from the code that measures film, which is scored against it: straightforward, over the whole scene
 * at once, without uncertainty. A {@link floorgauge.sampleclips.scenario.PlayedScene} goes in, labels come out.
 */
package floorgauge.sampleclips.labels.scene;
