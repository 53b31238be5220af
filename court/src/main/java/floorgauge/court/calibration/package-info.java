/**
 * From the picture to the floor and back: in come frames of a film, or named points in a file; out comes a {@link
 * floorgauge.court.calibration.CourtCalibration}, which places any pixel on the floor with a covariance, says how far it
 * can be trusted, and refuses where the painted lines do not carry it.
 *
 * <p>Valid input: the picture is that of a camera with square pixels whose principal point is the picture's centre; the
 * floor is flat. Picture frame and court frame are those of {@link floorgauge.court.floor}.
 */
package floorgauge.court.calibration;
