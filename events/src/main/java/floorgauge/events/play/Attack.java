package floorgauge.events.play;

import floorgauge.court.rules.CourtEnd;
import floorgauge.court.track.Team;

/** Who attacks which end. */
enum Attack {
    FIRST_NEGATIVE(Team.FIRST, CourtEnd.NEGATIVE_X),
    FIRST_POSITIVE(Team.FIRST, CourtEnd.POSITIVE_X),
    SECOND_NEGATIVE(Team.SECOND, CourtEnd.NEGATIVE_X),
    SECOND_POSITIVE(Team.SECOND, CourtEnd.POSITIVE_X);

    private final Team team;
    private final CourtEnd end;

    Attack(Team team, CourtEnd end) {
        this.team = team;
        this.end = end;
    }

    Team team() {
        return team;
    }

    CourtEnd end() {
        return end;
    }

    Team defence() {
        return team == Team.FIRST ? Team.SECOND : Team.FIRST;
    }
}
