/**
 * Scores of poses against labelled poses: object keypoint similarity with average precision and recall as the COCO keypoint
 * task defines them, and the percentage of correct keypoints. Positions are pixels of the film as stored. Which joints a
 * label holds is a set beside it; a joint outside the set is not scored.
 */
package floorgauge.eval.pose;
