package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Team;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SideCounterTest {

    private final List<Tracklet> tracks = new ArrayList<>();
    private final List<Team> teams = new ArrayList<>();

    private void player(Team team, double from, double to, double x) {
        double y = tracks.size() - 5.0;
        tracks.add(TestSightings.walk(from, to, t -> new FloorPoint(x, y), t -> TestSightings.WHITE, t -> 1.9));
        teams.add(team);
    }

    private Optional<SideCounter.Sides> count() {
        return SideCounter.count(tracks, teams, RuleSet.fiba());
    }

    @Test
    void nobodyIsNoSide() {
        assertThat(count()).isEmpty();
    }

    @Test
    void oneKitAloneIsNoGame() {
        player(Team.FIRST, 0, 8, 5);
        assertThat(count()).isEmpty();
    }

    @Test
    void threeAgainstThreeWithPiecesAndAPersonSeenDouble() {
        for (int i = 0; i < 3; i++) {
            player(Team.FIRST, 0, i == 0 ? 4 : 8, 5);
            player(Team.SECOND, 0, 8, 8);
        }
        player(Team.FIRST, 4.4, 8, 5);
        player(Team.SECOND, 2, 3, 8);
        player(Team.UNKNOWN, 0, 8, 5);
        assertThat(count()).contains(new SideCounter.Sides(3, 3));
    }

    @Test
    void whoStandsOutsideTheLinesIsNotCounted() {
        player(Team.FIRST, 0, 8, 5);
        player(Team.FIRST, 0, 8, 16);
        player(Team.SECOND, 0, 8, 5);
        assertThat(count()).contains(new SideCounter.Sides(1, 1));
    }

    @Test
    void oneTakenForAnOpponentLeavesTheSidesEven() {
        for (int i = 0; i < 6; i++) {
            player(Team.FIRST, 0, 8, 5);
        }
        for (int i = 0; i < 4; i++) {
            player(Team.SECOND, 0, 8, 5);
        }
        assertThat(count()).contains(new SideCounter.Sides(5, 5));
    }
}
