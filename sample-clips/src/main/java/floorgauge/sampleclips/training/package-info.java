/**
 * Rendered pictures with boxes and balls for training networks: run by a maintainer, never by a build. Scenario seeds
 * below {@value floorgauge.sampleclips.training.TrainingPictures#FIRST_HELD_OUT_SEED} only; the others are for scores.
 */
package floorgauge.sampleclips.training;
