package floorgauge.court.floor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class FloorEstimateTest {

    @Test
    void equalEstimatesMeetInTheMiddleWithHalfTheVariance() {
        FloorEstimate a = new FloorEstimate(new FloorPoint(1, 2), FloorCovariance.isotropic(0.2));
        FloorEstimate b = new FloorEstimate(new FloorPoint(1.1, 2), FloorCovariance.isotropic(0.2));
        FloorEstimate both = a.with(b);
        assertThat(both.mean().xMetres()).isCloseTo(1.05, within(1e-12));
        assertThat(both.mean().yMetres()).isCloseTo(2, within(1e-12));
        assertThat(both.covariance().xx()).isCloseTo(0.02, within(1e-12));
        assertThat(both.covariance().xy()).isCloseTo(0, within(1e-12));
    }

    @Test
    void correlatedEstimatesAreWeighedByTheirInformation() {
        FloorEstimate a = new FloorEstimate(new FloorPoint(0, 0), new FloorCovariance(2, 1, 2));
        FloorEstimate b = new FloorEstimate(new FloorPoint(1, 1), new FloorCovariance(1, 0, 4));
        // Information: A^-1 = [[2, -1], [-1, 2]] / 3, B^-1 = [[1, 0], [0, 0.25]]; sum [[5/3, -1/3], [-1/3, 11/12]].
        double determinant = 5.0 / 3 * 11 / 12 - 1.0 / 9;
        FloorEstimate both = a.with(b);
        assertThat(both.covariance().xx()).isCloseTo(11.0 / 12 / determinant, within(1e-12));
        assertThat(both.covariance().yy()).isCloseTo(5.0 / 3 / determinant, within(1e-12));
        assertThat(both.covariance().xy()).isCloseTo(1.0 / 3 / determinant, within(1e-12));
        assertThat(both.mean().xMetres()).isCloseTo((11.0 / 12 + 0.25 / 3) / determinant, within(1e-12));
        assertThat(both.mean().yMetres()).isCloseTo((1.0 / 3 + 0.25 * 5 / 3) / determinant, within(1e-12));
    }

    @Test
    void aContradictionIsCarriedInTheError() {
        FloorEstimate a = new FloorEstimate(new FloorPoint(0, 0), FloorCovariance.isotropic(0.1));
        FloorEstimate b = new FloorEstimate(new FloorPoint(2, 0), FloorCovariance.isotropic(0.1));
        // d' (A + B)^-1 d = 4 / 0.02 = 200, over two degrees of freedom 100.
        assertThat(a.with(b).covariance().xx()).isCloseTo(0.005 * 100, within(1e-9));
    }

    @Test
    void exactPlacesStayAsTheyAre() {
        FloorEstimate a = new FloorEstimate(new FloorPoint(3, 4), new FloorCovariance(0, 0, 0));
        assertThat(a.with(a)).isEqualTo(a);
    }
}
