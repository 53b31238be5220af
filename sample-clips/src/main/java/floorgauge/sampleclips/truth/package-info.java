/**
 * What is true of a rendered film, frame by frame: camera, boxes, joints, floor positions, ball. Made by the renderer,
 * written as JSON, MOTChallenge text and COCO keypoints JSON, read by whatever is scored. See {@code docs/truth.md}.
 */
package floorgauge.sampleclips.truth;
