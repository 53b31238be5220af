/**
 * Clothes' colours: sampled from the torso of a person in the picture, compared, and sorted into the two teams' kits and
 * the rest over a whole film.
 */
package floorgauge.vision.kit;
