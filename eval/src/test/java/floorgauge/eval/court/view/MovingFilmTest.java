package floorgauge.eval.court.view;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.rules.RuleSet;
import org.junit.jupiter.api.Test;

/**
 * The court followed through rendered films. The property floorgauge.panSeconds lengthens the panning one; an ordinary
 * build takes a few seconds of it.
 */
class MovingFilmTest {

    private static final int WIDTH = 960;
    private static final int HEIGHT = 540;

    private static MovingFilm film(double framesPerSecond, double seconds, long seed) {
        return new MovingFilm(RuleSet.fiba(), false, WIDTH, HEIGHT, framesPerSecond, seconds, seed);
    }

    private static MovingFilm.Outcome follow(MovingFilm film, MovingFilm.Motion motion) {
        MovingFilm.Outcome outcome = film.follow(motion, (index, picture, found) -> {});
        outcome.log().forEach(System.out::println);
        System.out.println(outcome);
        return outcome;
    }

    @Test
    void aPanningAndZoomingCameraIsFollowed() {
        double seconds = Double.parseDouble(System.getProperty("floorgauge.panSeconds", "2"));
        MovingFilm film = new MovingFilm(RuleSet.fiba(), true, WIDTH, HEIGHT, 12.5, seconds, 9001);
        MovingFilm.Outcome outcome =
                follow(film, MovingFilm.panning(RuleSet.fiba().lengthMetres() / 2, 9001));
        assertThat(outcome.unreported()).isZero();
        assertThat(outcome.lost()).isLessThanOrEqualTo((int) (0.05 * outcome.pictures()));
        assertThat(outcome.errorQuantileMetres(0.5)).isLessThanOrEqualTo(0.08);
    }

    @Test
    void aKnockedTripodIsFollowedOn() {
        MovingFilm film = film(5, 2, 9002);
        MovingFilm.Outcome outcome = follow(film, film.knocked());
        assertThat(outcome.unreported()).isZero();
        assertThat(outcome.lost()).isLessThanOrEqualTo(2);
        assertThat(outcome.errorQuantileMetres(0.95)).isLessThanOrEqualTo(0.15);
    }

    @Test
    void aCutIsSeenAndTheNextShotCalibrated() {
        MovingFilm film = film(5, 2, 9003);
        MovingFilm.Outcome outcome = follow(film, film.cut());
        assertThat(outcome.unreported()).isZero();
        assertThat(outcome.lost()).isLessThanOrEqualTo(3);
        assertThat(outcome.errorQuantileMetres(0.95)).isLessThanOrEqualTo(0.15);
    }

    @Test
    void aCameraThatLooksAwayLosesTheCourtSaysSoAndFindsItAgain() {
        MovingFilm film = film(5, 3, 9004);
        MovingFilm.Outcome outcome = follow(film, film.lookingAway());
        assertThat(outcome.unreported()).isZero();
        assertThat(outcome.lost()).isBetween(4, 8);
        assertThat(outcome.errorQuantileMetres(0.95)).isLessThanOrEqualTo(0.15);
    }
}
