/**
 * The neural networks. A picture goes in as an OpenCV matrix (8-bit BGR); {@link floorgauge.vision.network.PersonDetector}
 * gives boxes round people, {@link floorgauge.vision.network.PoseEstimator} the joints of the person in each box, all in
 * pixels of that picture. The networks are TorchScript files out of the folder {@code models}, run by PyTorch through DJL
 * without a connection to the network of computers. Native memory has one owner, which is closed.
 */
package floorgauge.vision.network;
