/**
 * From a person in the picture to the floor: where the feet stand, with a covariance, and what the pose says of the body
 * (ankles, facing, stance). In: boxes and joints in pixels and the court's calibration. Out: values in the court frame.
 */
package floorgauge.vision.body;
