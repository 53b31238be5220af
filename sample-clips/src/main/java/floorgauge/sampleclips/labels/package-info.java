/**
 * Labels of a film: what happened on it, as one annotator says, or as the truth of a scene. One JSON file a film and annotator;
 * its schema is the resource {@code labels.schema.json}. Hand labels and the truth of rendered film share the format, so that
 * everything is scored in one way.
 */
package floorgauge.sampleclips.labels;
