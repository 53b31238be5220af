package floorgauge.app.chain;

import floorgauge.court.calibration.CameraWatch;
import floorgauge.court.calibration.CourtFollower;
import floorgauge.court.calibration.CourtOverTime;
import floorgauge.court.rules.RuleSet;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.nio.file.Path;
import java.util.Optional;

/** A film read from its beginning for its camera: whether it moves, and where the court is while it does. */
final class FollowedFilm {

    /** Small pictures tell well enough whether a camera moves. */
    private static final int WATCHED_WIDTH = 640;

    private static final double WATCHED_EVERY_SECONDS = 1;

    private FollowedFilm() {}

    /** Whether the camera moves in the film's first seconds. */
    static CameraWatch.Verdict watch(Path film, double mostSeconds) {
        try (FilmReader reader = FilmReader.open(film, WATCHED_WIDTH);
                FilmFrame frame = new FilmFrame();
                CameraWatch camera = new CameraWatch()) {
            double next = Double.NEGATIVE_INFINITY;
            while (camera.verdict() != CameraWatch.Verdict.MOVES
                    && reader.read(frame)
                    && frame.timeSeconds() <= mostSeconds) {
                if (frame.timeSeconds() >= next) {
                    camera.look(frame.bgr());
                    next = frame.timeSeconds() + WATCHED_EVERY_SECONDS;
                }
            }
            return camera.verdict();
        }
    }

    /** The court in every picture of the film's first seconds. */
    static CourtOverTime follow(Path film, Optional<RuleSet> rules, double mostSeconds) {
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame();
                CourtFollower follower = new CourtFollower(rules)) {
            double last = Double.NEGATIVE_INFINITY;
            while (reader.read(frame) && frame.timeSeconds() <= mostSeconds) {
                if (frame.timeSeconds() > last) {
                    follower.next(frame.bgr(), frame.timeSeconds());
                    last = frame.timeSeconds();
                }
            }
            return follower.courts();
        }
    }
}
