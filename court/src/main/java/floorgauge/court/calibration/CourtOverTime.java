package floorgauge.court.calibration;

import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;

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
    private final TreeMap<Double, CourtCalibration> byTime;

    private CourtOverTime(CourtCalibration first, TreeMap<Double, CourtCalibration> byTime) {
        this.first = first;
        this.byTime = byTime;
    }

    /** The same calibration all through. */
    public static CourtOverTime still(CourtCalibration calibration) {
        return new CourtOverTime(Objects.requireNonNull(calibration, "calibration"), new TreeMap<>());
    }

    /**
     * One calibration a picture.
     *
     * @param byTime at least one, by presentation time in seconds; all of one picture size and court
     */
    public static CourtOverTime moving(Map<Double, CourtCalibration> byTime) {
        if (byTime.isEmpty()) {
            throw new IllegalArgumentException("a moving camera's court needs at least one picture");
        }
        TreeMap<Double, CourtCalibration> sorted = new TreeMap<>(byTime);
        CourtCalibration best = sorted.values().stream()
                .filter(c -> c.status() != CalibrationStatus.NONE)
                .findFirst()
                .orElseGet(() -> sorted.firstEntry().getValue());
        for (CourtCalibration c : sorted.values()) {
            if (c.widthPixels() != best.widthPixels() || c.heightPixels() != best.heightPixels()) {
                throw new IllegalArgumentException("the pictures of one film have one size");
            }
        }
        return new CourtOverTime(best, sorted);
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
        Map.Entry<Double, CourtCalibration> before = byTime.floorEntry(timeSeconds);
        Map.Entry<Double, CourtCalibration> after = byTime.ceilingEntry(timeSeconds);
        Optional<Map.Entry<Double, CourtCalibration>> nearest = Optional.ofNullable(before);
        if (after != null && (before == null || after.getKey() - timeSeconds < timeSeconds - before.getKey())) {
            nearest = Optional.of(after);
        }
        return nearest.filter(e -> Math.abs(e.getKey() - timeSeconds) <= REACH_SECONDS)
                .map(Map.Entry::getValue)
                .orElseGet(() -> CourtCalibration.none(
                        first.rules(), first.widthPixels(), first.heightPixels(), "No picture was looked at here."));
    }

    /** The film in stretches of one status, in order; empty for a still camera. */
    public List<Stretch> stretches() {
        List<Stretch> stretches = new ArrayList<>();
        for (Map.Entry<Double, CourtCalibration> entry : byTime.entrySet()) {
            CourtCalibration c = entry.getValue();
            Stretch last = stretches.isEmpty() ? null : stretches.get(stretches.size() - 1);
            if (last != null && last.status() == c.status()) {
                stretches.set(
                        stretches.size() - 1,
                        new Stretch(last.startSeconds(), entry.getKey(), last.status(), last.reason()));
            } else {
                stretches.add(new Stretch(entry.getKey(), entry.getKey(), c.status(), c.reason()));
            }
        }
        return stretches;
    }

    /** Share of the pictures with a court, 0 to 1; 1 or 0 for a still camera. */
    public double foundShare() {
        if (byTime.isEmpty()) {
            return first.status() == CalibrationStatus.NONE ? 0 : 1;
        }
        long found = byTime.values().stream()
                .filter(c -> c.status() != CalibrationStatus.NONE)
                .count();
        return (double) found / byTime.size();
    }
}
