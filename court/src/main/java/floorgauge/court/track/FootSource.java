package floorgauge.court.track;

/** What a position on the floor was measured from. */
public enum FootSource {
    /** Both ankles' floor contacts. */
    ANKLES,
    /** One ankle's floor contact; the other was hidden. */
    ONE_ANKLE,
    /** The lower edge of the box; no ankle was seen. */
    BOX_BOTTOM,
    /** Nothing in this frame: the motion model's prediction between frames that were measured. */
    PREDICTED,
    /** Known from a label or a renderer, not measured. */
    TRUTH
}
