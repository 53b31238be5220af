package floorgauge.court.calibration;

import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Where the court is at every instant of a film: one calibration all through for a camera that stands still, one a picture
 * for a camera that moves, none where the court was lost. Immutable.
 */
public final class CourtOverTime {

    /** A calibration holds for pictures this near in time: half of the slowest film's interval. */
    private static final double REACH_SECONDS = 0.06;

    /**
     * A stretch of film with one status.
     *
     * @param startSeconds time of its first picture
     * @param endSeconds time of its last picture
     * @param status good, weak or none
     * @param reason of its first picture
     */
    public record Stretch(double startSeconds, double endSeconds, CalibrationStatus status, String reason) {

        public Stretch {
            Objects.requireNonNull(status, "status");
            Objects.requireNonNull(reason, "reason");
            if (!(endSeconds >= startSeconds)) {
                throw new IllegalArgumentException(
                        "a stretch ends after it starts: " + startSeconds + ", " + endSeconds);
            }
        }
    }

    private final CourtCalibration first;

    /** Empty for a still camera. */
    private final Optional<CalibrationLog> byTime;

    /** So many pictures of the log are this court's: more may have been added since. */
    private final int count;

    private CourtOverTime(CourtCalibration first, Optional<CalibrationLog> byTime) {
        this.first = first;
        this.byTime = byTime;
        this.count = byTime.map(CalibrationLog::size).orElse(0);
    }

    /** The same calibration all through. */
    public static CourtOverTime still(CourtCalibration calibration) {
        return new CourtOverTime(Objects.requireNonNull(calibration, "calibration"), Optional.empty());
    }

    /**
     * One calibration a picture.
     *
     * @param byTime at least one, by presentation time in seconds; all of one picture size and court
     */
    public static CourtOverTime moving(Map<Double, CourtCalibration> byTime) {
        CalibrationLog log = new CalibrationLog();
        Optional<CourtCalibration> size = byTime.values().stream().findAny();
        for (Map.Entry<Double, CourtCalibration> entry : new TreeMap<>(byTime).entrySet()) {
            CourtCalibration c = entry.getValue();
            if (c.widthPixels() != size.orElseThrow().widthPixels()
                    || c.heightPixels() != size.orElseThrow().heightPixels()) {
                throw new IllegalArgumentException("the pictures of one film have one size");
            }
            log.add(entry.getKey(), c);
        }
        return moving(log);
    }

    /** One calibration a picture, of one picture size and court. */
    static CourtOverTime moving(CalibrationLog log) {
        if (log.size() == 0) {
            throw new IllegalArgumentException("a moving camera's court needs at least one picture");
        }
        int best = 0;
        while (best < log.size() && log.status(best) == CalibrationStatus.NONE) {
            best++;
        }
        return new CourtOverTime(log.read(best < log.size() ? best : 0), Optional.of(log));
    }

    /** Whether one calibration holds all through. */
    public boolean isStill() {
        return byTime.isEmpty();
    }

    /** The calibration of a still camera, or the first of a moving one that is not none; of status NONE if all are. */
    public CourtCalibration first() {
        return first;
    }

    public RuleSet rules() {
        return first.rules();
    }

    public int widthPixels() {
        return first.widthPixels();
    }

    public int heightPixels() {
        return first.heightPixels();
    }

    /**
     * The calibration that holds at a presentation time.
     *
     * @return never null; status NONE where the court was lost, or no picture was looked at near that time
     */
    public CourtCalibration at(double timeSeconds) {
        if (byTime.isEmpty()) {
            return first;
        }
        CalibrationLog log = byTime.get();
        int nearest = Math.min(log.atOrBefore(timeSeconds), count - 1);
        if (nearest + 1 < count
                && (nearest < 0
                        || log.timeSeconds(nearest + 1) - timeSeconds < timeSeconds - log.timeSeconds(nearest))) {
            nearest++;
        }
        return nearest >= 0 && Math.abs(log.timeSeconds(nearest) - timeSeconds) <= REACH_SECONDS
                ? log.read(nearest)
                : CourtCalibration.none(
                        first.rules(), first.widthPixels(), first.heightPixels(), "No picture was looked at here.");
    }

    /** The film in stretches of one status, in order; empty for a still camera. */
    public List<Stretch> stretches() {
        List<Stretch> stretches = new ArrayList<>();
        int begun = 0;
        for (int i = 1; i <= count; i++) {
            CalibrationLog log = byTime.orElseThrow();
            if (i == count || log.status(i) != log.status(begun)) {
                stretches.add(new Stretch(
                        log.timeSeconds(begun),
                        log.timeSeconds(i - 1),
                        log.status(begun),
                        log.read(begun).reason()));
                begun = i;
            }
        }
        return stretches;
    }

    /** Share of the pictures with a court, 0 to 1; 1 or 0 for a still camera. */
    public double foundShare() {
        if (byTime.isEmpty()) {
            return first.status() == CalibrationStatus.NONE ? 0 : 1;
        }
        CalibrationLog log = byTime.get();
        long found = IntStream.range(0, count)
                .filter(i -> log.status(i) != CalibrationStatus.NONE)
                .count();
        return (double) found / count;
    }
}
