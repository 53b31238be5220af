package floorgauge.app.export;

import floorgauge.events.finding.Finding;

/**
 * The stretch of film that shows a finding.
 *
 * @param fromSeconds start, presentation time, at least 0
 * @param toSeconds end, after the start
 */
public record Cut(double fromSeconds, double toSeconds) {

    public Cut {
        if (!(fromSeconds >= 0 && toSeconds > fromSeconds)) {
            throw new IllegalArgumentException("a cut ends after its start: " + fromSeconds + " to " + toSeconds);
        }
    }

    /**
     * With room before and after.
     *
     * @param room how much, within the film
     * @param filmSeconds length of the film
     */
    static Cut of(Finding finding, Room room, double filmSeconds) {
        double from = Math.max(0, finding.fromSeconds() - room.beforeSeconds());
        double to = Math.min(Math.max(filmSeconds, finding.toSeconds()), finding.toSeconds() + room.afterSeconds());
        // A finding of one instant at the film's very end still shows something.
        return to - from >= LEAST_SECONDS
                ? new Cut(from, to)
                : new Cut(Math.max(0, to - LEAST_SECONDS), Math.max(to, LEAST_SECONDS));
    }

    private static final double LEAST_SECONDS = 0.2;

    /**
     * Film shown around a finding.
     *
     * @param beforeSeconds at least 0
     * @param afterSeconds at least 0
     */
    public record Room(double beforeSeconds, double afterSeconds) {

        public Room {
            if (!(beforeSeconds >= 0 && afterSeconds >= 0 && Double.isFinite(beforeSeconds + afterSeconds))) {
                throw new IllegalArgumentException("room is at least 0 s: " + beforeSeconds + ", " + afterSeconds);
            }
        }
    }
}
