/**
 * Scenes of the scenario library as labelled films without a picture: scenarios and seeds go in, their true labels and what the
 * measurement finds on their tracks come out.
 */
package floorgauge.eval.scene;
