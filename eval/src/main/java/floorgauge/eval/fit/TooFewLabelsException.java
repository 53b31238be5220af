package floorgauge.eval.fit;

import floorgauge.court.failure.MendableException;

/** There is too little to fit to: says how much there is and how much is needed. */
public final class TooFewLabelsException extends MendableException {

    private static final long serialVersionUID = 1L;

    /** Fewer films than this say nothing of a film that was not seen. */
    static final int FEWEST_FILMS = 5;

    /** Fewer labels than this fit to chance. */
    static final int FEWEST_LABELS = 20;

    private final long labels;

    TooFewLabelsException(long labels, String what, long films) {
        super(labels + " " + what + " on " + films + (films == 1 ? " film" : " films")
                + " are too few to fit to: at least "
                + FEWEST_LABELS + " on " + FEWEST_FILMS
                + " films are needed; label more film, or keep the standards as they are");
        this.labels = labels;
    }

    /** How many there are. */
    public long labels() {
        return labels;
    }

    /** Refuses where there is too little. */
    static void require(long labels, String what, long films) {
        if (labels < FEWEST_LABELS || films < FEWEST_FILMS) {
            throw new TooFewLabelsException(labels, what, films);
        }
    }
}
