package floorgauge.vision.tracking;

/** Whom a film is followed for. */
public enum Whom {
    /**
     * The players of a practice: those who are inside the lines, of two kits, as many of each as the film or the coach says.
     */
    PLAYERS,
    /**
     * Everyone in the picture, where there is no court to tell players from others and no game to say how many there are:
     * people come and go, and nobody has a team.
     */
    EVERYONE
}
