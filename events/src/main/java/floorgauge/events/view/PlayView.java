package floorgauge.events.view;

import floorgauge.events.control.BallControl;
import floorgauge.events.matchup.Matchups;
import floorgauge.events.play.Play;
import floorgauge.events.standards.Standards;
import java.util.Objects;

/**
 * A play with what several measurements need of it.
 *
 * @param play in the attack frame
 * @param matchups who guards whom
 * @param control who has the ball
 * @param standards what it is held to
 */
public record PlayView(Play play, Matchups matchups, BallControl control, Standards standards) {

    public PlayView {
        Objects.requireNonNull(play, "play");
        Objects.requireNonNull(matchups, "matchups");
        Objects.requireNonNull(control, "control");
        Objects.requireNonNull(standards, "standards");
    }
}
