package floorgauge.eval.film;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtCalibrator;
import floorgauge.court.rules.RuleSet;
import floorgauge.events.Measurement;
import floorgauge.events.finding.Finding;
import floorgauge.events.standards.Standards;
import floorgauge.vision.film.CourtFrames;
import floorgauge.vision.tracking.FilmTracker;
import floorgauge.vision.tracking.TrackedFilm;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What the program measures on a film, stage by stage.
 *
 * @param court from the painted lines, or as given
 * @param tracked everyone on the floor; empty where no court was found
 * @param findings in order of time; none without a court
 */
public record FilmMeasurement(CourtCalibration court, Optional<TrackedFilm> tracked, List<Finding> findings) {

    public FilmMeasurement {
        Objects.requireNonNull(court, "court");
        Objects.requireNonNull(tracked, "tracked");
        findings = List.copyOf(findings);
    }

    /** The court from the lines, and all that follows. */
    public static FilmMeasurement of(Path film, RuleSet rules, FilmTracker tracker) {
        return of(film, court(film, rules), tracker);
    }

    /** Everything after the court. */
    public static FilmMeasurement of(Path film, CourtCalibration court, FilmTracker tracker) {
        if (court.status() == CalibrationStatus.NONE) {
            return new FilmMeasurement(court, Optional.empty(), List.of());
        }
        TrackedFilm tracked = tracker.track(film, court, (reached, duration) -> {});
        List<Finding> findings = Measurement.measure(tracked.tracks(), court.rules(), Standards.defaults())
                .all();
        return new FilmMeasurement(court, Optional.of(tracked), findings);
    }

    /** The court from the lines alone; may be of status NONE. */
    public static CourtCalibration court(Path film, RuleSet rules) {
        return CourtFrames.with(film, frames -> CourtCalibrator.fromLines(Optional.of(rules), frames));
    }
}
