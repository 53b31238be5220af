package floorgauge.court.track;

/**
 * Whom a track belongs to. The two teams are told apart by their kits, in an order fixed by the film alone; which of them
 * attacks is for events to say.
 */
public enum Team {
    FIRST,
    SECOND,
    OFFICIAL,
    STAFF,
    UNKNOWN
}
