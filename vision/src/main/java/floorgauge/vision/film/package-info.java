/**
 * Film in and out. {@link floorgauge.vision.film.FilmReader} turns a film of any common container and codec into upright
 * BGR pictures with presentation times, one at a time, so that a film never sits in memory whole;
 * {@link floorgauge.vision.film.FilmWriter} turns such pictures into H.264 in MP4, which browsers play. Both stand on
 * FFmpeg's libraries in their LGPL build. What a user can mend is a {@link floorgauge.vision.film.FilmException}.
 */
package floorgauge.vision.film;
