/**
 * People followed on the floor. In: sightings (a person in one frame, placed on the floor with a covariance) and the
 * court's calibration. Out: {@link floorgauge.court.track.FilmTracks}. Everything is in metres, seconds and the court frame;
 * neither the film's frame rate nor its resolution enters a decision.
 *
 * <p>The steps, each a class: {@link floorgauge.vision.tracking.TrackletBuilder} joins sightings of consecutive frames,
 * {@link floorgauge.vision.tracking.EncounterCutter} cuts where two people met, {@link
 * floorgauge.vision.tracking.TrackletLinker} joins the pieces with the whole film in view, {@link
 * floorgauge.vision.tracking.GapFiller} fills short gaps. {@link floorgauge.vision.tracking.FilmTracker} runs the whole from
 * a film.
 */
package floorgauge.vision.tracking;
