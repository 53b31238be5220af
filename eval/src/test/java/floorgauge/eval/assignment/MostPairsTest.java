package floorgauge.eval.assignment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.eval.assignment.MostPairs.Candidate;
import java.util.List;
import org.junit.jupiter.api.Test;

class MostPairsTest {

    @Test
    void nothingNear() {
        assertThat(MostPairs.match(List.of(), 0, 0)).isEmpty();
        assertThat(MostPairs.match(List.of(), 2, 2)).containsExactly(-1, -1);
    }

    @Test
    void theEdgeOfTheToleranceStillMatches() {
        assertThat(MostPairs.match(List.of(new Candidate(0, 0, 0)), 1, 1)).containsExactly(0);
    }

    /** Times 0, 1 against 1.1, 2 with tolerance 1.15: greedily 1-1.1 alone would be closest; two pairs are to be had. */
    @Test
    void onePairMoreIsWorthMoreThanCloseness() {
        List<Candidate> candidates =
                List.of(new Candidate(0, 0, 0.04), new Candidate(1, 0, 0.91), new Candidate(1, 1, 0.13));
        assertThat(MostPairs.match(candidates, 2, 2)).containsExactly(0, 1);
    }

    @Test
    void amongEqualNumbersTheClosestWins() {
        List<Candidate> candidates = List.of(new Candidate(0, 0, 0.2), new Candidate(0, 1, 0.7));
        assertThat(MostPairs.match(candidates, 1, 2)).containsExactly(1);
    }

    @Test
    void refusesWhatIsNoCloseness() {
        assertThatThrownBy(() -> new Candidate(0, 0, 1.5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Candidate(0, 0, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
