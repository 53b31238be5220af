package floorgauge.court.floor;

import java.util.Objects;

/**
 * A measured position on the floor: mean and covariance in the court frame. Nothing downstream drops the covariance.
 *
 * @param mean metres, court frame
 * @param covariance square metres, court frame
 */
public record FloorEstimate(FloorPoint mean, FloorCovariance covariance) {

    public FloorEstimate {
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(covariance, "covariance");
    }

    /**
     * What two independent estimates of one place say together: {@code a + A (A + B)^-1 (b - a)}, covariance
     * {@code A - A (A + B)^-1 A}. Where they contradict each other, {@code d' (A + B)^-1 d > 2}, the covariance grows by that
     * over 2 (R. Birge, "The calculation of errors by the method of least squares", 1932).
     */
    public FloorEstimate with(FloorEstimate other) {
        FloorCovariance a = covariance;
        FloorCovariance s = a.plus(other.covariance);
        double determinant = s.xx() * s.yy() - s.xy() * s.xy();
        if (!(determinant > 0)) {
            return this;
        }
        double ixx = s.yy() / determinant;
        double ixy = -s.xy() / determinant;
        double iyy = s.xx() / determinant;
        double gxx = a.xx() * ixx + a.xy() * ixy;
        double gxy = a.xx() * ixy + a.xy() * iyy;
        double gyx = a.xy() * ixx + a.yy() * ixy;
        double gyy = a.xy() * ixy + a.yy() * iyy;
        double dx = other.mean.xMetres() - mean.xMetres();
        double dy = other.mean.yMetres() - mean.yMetres();
        double contradiction = Math.max(1, (dx * (ixx * dx + ixy * dy) + dy * (ixy * dx + iyy * dy)) / 2);
        double xx = Math.max(0, a.xx() - gxx * a.xx() - gxy * a.xy());
        double yy = Math.max(0, a.yy() - gyx * a.xy() - gyy * a.yy());
        double most = Math.sqrt(xx * yy);
        double xy = Math.max(-most, Math.min(most, a.xy() - gxx * a.xy() - gxy * a.yy()));
        return new FloorEstimate(
                new FloorPoint(mean.xMetres() + gxx * dx + gxy * dy, mean.yMetres() + gyx * dx + gyy * dy),
                new FloorCovariance(contradiction * xx, contradiction * xy, contradiction * yy));
    }

    /** This estimate turned by 180 degrees about the centre of the court. */
    public FloorEstimate turnedHalf() {
        return new FloorEstimate(mean.turnedHalf(), covariance);
    }
}
