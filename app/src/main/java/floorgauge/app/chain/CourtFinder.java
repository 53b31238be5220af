package floorgauge.app.chain;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CameraWatch;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtCalibrator;
import floorgauge.court.calibration.CourtOverTime;
import floorgauge.court.calibration.PointsFile;
import floorgauge.court.calibration.SavedCourt;
import floorgauge.court.failure.MendableException;
import floorgauge.court.rules.GymFile;
import floorgauge.court.rules.RuleSet;
import floorgauge.vision.film.CourtFrames;
import floorgauge.vision.film.FilmInfo;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.opencv.core.Mat;

/** Finds the court of a film: from a points file where there is one, else from the painted lines. */
public final class CourtFinder {

    private static final String POINTS_ENDING = ".points.yaml";

    private final Optional<Path> points;
    private final Optional<Path> saved;
    private final Optional<RuleSet> rules;

    /**
     * @param points a points file for all films; without, one beside a film is used
     * @param saved a court of another film from the same camera place, for films without points
     * @param court name of a rule book; without, the points file's, else the one that fits the lines
     * @throws MendableException where the rule book is unknown
     */
    public CourtFinder(Optional<Path> points, Optional<Path> saved, Optional<String> court) {
        this.points = points;
        this.saved = saved;
        this.rules = court.map(CourtFinder::ruleSet);
    }

    /** The rule book asked for. */
    public Optional<RuleSet> rules() {
        return rules;
    }

    /** The points file that holds for a film. */
    public Optional<Path> pointsFor(Path film) {
        if (points.isPresent()) {
            return points;
        }
        String name = film.getFileName().toString();
        int dot = name.lastIndexOf('.');
        Path beside = film.resolveSibling((dot > 0 ? name.substring(0, dot) : name) + POINTS_ENDING);
        return Files.isRegularFile(beside) ? Optional.of(beside) : Optional.empty();
    }

    /**
     * Finds the court.
     *
     * @param notes told in one line what became of a saved court
     * @return its first calibration is never of status NONE
     * @throws MendableException where there is no court to be found, saying what to do
     */
    public CourtOverTime find(Path film, FilmInfo info, Consumer<String> notes) {
        CourtSurvey found = survey(film, info, Double.POSITIVE_INFINITY);
        found.saved().ifPresent(notes);
        if (found.calibration().status() == CalibrationStatus.NONE) {
            throw new MendableException(film + ": no court found. "
                    + found.calibration().reason() + " Mark its points in a file and give it with --points");
        }
        return found.courts();
    }

    /**
     * Looks for the court.
     *
     * @param mostSeconds of the film's beginning to look at
     * @return may be of status NONE where the lines were looked for
     * @throws MendableException where a points file is missing or wrong
     */
    public CourtSurvey survey(Path film, FilmInfo info, double mostSeconds) {
        Optional<Path> file = pointsFor(film);
        if (file.isEmpty()) {
            return fromLines(film, mostSeconds);
        }
        PointsFile marked = PointsFile.read(file.get());
        RuleSet court = rulesOf(marked);
        return CourtSurvey.fromPoints(
                CourtCalibrator.fitPoints(court, marked, info.width(), info.height()),
                marked.marks(court, info.width(), info.height()));
    }

    /** Once for all pictures where the camera stands still, else picture by picture. */
    private CourtSurvey fromLines(Path film, double mostSeconds) {
        Optional<SavedCourt> kept = saved.map(this::read);
        CameraWatch.Verdict camera = FollowedFilm.watch(film, mostSeconds);
        if (camera != CameraWatch.Verdict.MOVES) {
            CourtSurvey still = CourtFrames.with(film, frames -> still(kept, frames));
            if (camera == CameraWatch.Verdict.STILL || still.calibration().status() != CalibrationStatus.NONE) {
                return still;
            }
        }
        return CourtSurvey.fromLines(
                FollowedFilm.follow(film, rules, mostSeconds),
                kept.map(court -> "The camera moves, so the saved court was not used."));
    }

    private SavedCourt read(Path file) {
        SavedCourt kept = SavedCourt.read(file);
        RuleSet own = kept.calibration().rules();
        if (rules.isPresent() && !rules.get().equals(own)) {
            throw new MendableException(file + " holds a court of " + own.name() + ", but --court says "
                    + rules.get().name() + "; leave one of them out");
        }
        return kept;
    }

    /** The saved court where it still fits, else the one that the lines show. */
    private CourtSurvey still(Optional<SavedCourt> kept, List<Mat> frames) {
        Optional<SavedCourt.Check> check = kept.map(court -> court.check(frames));
        CourtCalibration court =
                check.flatMap(SavedCourt.Check::calibration).orElseGet(() -> CourtCalibrator.fromLines(rules, frames));
        return CourtSurvey.fromLines(CourtOverTime.still(court), check.map(SavedCourt.Check::words));
    }

    /** The rule book of a points file's court. */
    public RuleSet rulesOf(PointsFile marked) {
        return rules.or(() -> marked.rulesName().map(CourtFinder::ruleSet))
                .orElseThrow(() -> new MendableException(
                        marked.file() + " names no rule book; add a line such as \"rules: fiba\", or give --court"));
    }

    /** The name of a file is the description of an odd gym. */
    static boolean isGymFile(String court) {
        return court.endsWith(".yaml") || court.endsWith(".yml");
    }

    private static RuleSet ruleSet(String name) {
        if (isGymFile(name)) {
            return GymFile.read(Path.of(name));
        }
        return RuleSet.named(name)
                .orElseThrow(() -> new MendableException("unknown rule book: " + name + "; there are "
                        + RuleSet.all().stream().map(RuleSet::name).collect(Collectors.joining(", "))));
    }
}
