package floorgauge.events.diagram;

/** What stands in a player's mark: a number, or up to three letters or digits. */
@FunctionalInterface
public interface PlayerLabels {

    /** The label of a track. */
    String of(int trackId);

    /** The film's own player ids. */
    static PlayerLabels trackIds() {
        return Integer::toString;
    }
}
