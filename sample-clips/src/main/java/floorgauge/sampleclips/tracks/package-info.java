/**
 * Scenes as a perfect tracker would see them, and as a faulty one does: a {@link floorgauge.sampleclips.scene.Scene} goes in,
 * {@link floorgauge.court.track.FilmTracks} come out. What reads tracks can be tried on these without a picture.
 */
package floorgauge.sampleclips.tracks;
