package floorgauge.vision.tracking;

/** What became of a box that the detector gave, and why. */
public enum Fate {
    /** It is part of a track. */
    FOLLOWED,
    /** Off the court, or of a size that nobody who stands there has. */
    OFF_THE_FLOOR,
    /** A second box about a person who has a better one. */
    SECOND_BOX,
    /** Nothing before or after it fits: a false alarm, or a glimpse. */
    SEEN_ONCE,
    /** Its person was seen for too short a time, or too seldom for the time it took. */
    TOO_BRIEF,
    /** Its person stays outside the lines: a coach, a substitute, someone who passes by. */
    OUTSIDE_THE_LINES,
    /** Its person never differs from the empty hall: a poster, a coat over a chair, someone who watches. */
    NEVER_MOVED,
    /** More people of that kit than are on the floor: the others were seen better. */
    ONE_TOO_MANY,
    /** The track that it was part of expects its person elsewhere. */
    NOT_EXPECTED
}
