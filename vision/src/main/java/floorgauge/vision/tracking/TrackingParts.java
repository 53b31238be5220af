package floorgauge.vision.tracking;

/**
 * Which parts of the tracking work. Each can be switched off to measure what it is worth.
 *
 * @param scale whether the detector sees the floor's part of the picture at the scale that players' size asks for; else the
 *     whole picture at its own
 * @param background whether what never differs from the empty hall is left out
 * @param pose whether joints say where the feet are; else the box's lower edge
 * @param appearance whether kits take part in telling people apart
 * @param sides whether left and right legs are kept apart over time
 * @param wholeFilm whether pieces are joined, exchanges mended and sightings given out anew with the whole film in view;
 *     else tracks end where the frame-by-frame assignment loses them
 */
public record TrackingParts(
        boolean scale, boolean background, boolean pose, boolean appearance, boolean sides, boolean wholeFilm) {

    /** Everything that helps. */
    public static final TrackingParts ALL = new TrackingParts(true, true, true, true, true, true);

    /** Without one of them. */
    public enum Part {
        SCALE,
        BACKGROUND,
        POSE,
        APPEARANCE,
        SIDES,
        WHOLE_FILM
    }

    /** All parts but one. */
    public static TrackingParts allBut(Part part) {
        return new TrackingParts(
                part != Part.SCALE,
                part != Part.BACKGROUND,
                part != Part.POSE,
                part != Part.APPEARANCE,
                part != Part.SIDES,
                part != Part.WHOLE_FILM);
    }
}
