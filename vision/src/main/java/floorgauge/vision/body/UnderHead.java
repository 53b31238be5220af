package floorgauge.vision.body;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import java.util.Objects;

/**
 * Where someone stands whose head is in view and whose height is not known yet: on a straight line of the floor, along which
 * the place moves by the same distance for every metre of height, since the line of sight is straight.
 *
 * @param atOneMetre where the head would be over the floor if it were one metre high; court frame
 * @param atTwoMetres the same for two metres
 * @param error square metres, from the head's place in the picture and the court's
 */
public record UnderHead(FloorPoint atOneMetre, FloorPoint atTwoMetres, FloorCovariance error) {

    public UnderHead {
        Objects.requireNonNull(atOneMetre, "atOneMetre");
        Objects.requireNonNull(atTwoMetres, "atTwoMetres");
        Objects.requireNonNull(error, "error");
    }

    /**
     * The place on the floor.
     *
     * @param heightMetres of the top of the head over the floor, as the person stands
     * @param sigmaMetres its standard deviation
     */
    public FloorEstimate at(double heightMetres, double sigmaMetres) {
        double dx = atTwoMetres.xMetres() - atOneMetre.xMetres();
        double dy = atTwoMetres.yMetres() - atOneMetre.yMetres();
        double up = heightMetres - 1;
        return new FloorEstimate(
                new FloorPoint(atOneMetre.xMetres() + up * dx, atOneMetre.yMetres() + up * dy),
                error.plus(ofHeight(sigmaMetres)));
    }

    /**
     * Where someone stands who seems to stand at a place, but whose feet are off the floor.
     *
     * @param seeming where the line of sight to the feet meets the floor
     * @param raisedMetres of the feet over the floor
     * @param sigmaMetres its standard deviation
     */
    public FloorEstimate lowered(FloorEstimate seeming, double raisedMetres, double sigmaMetres) {
        double dx = atTwoMetres.xMetres() - atOneMetre.xMetres();
        double dy = atTwoMetres.yMetres() - atOneMetre.yMetres();
        return new FloorEstimate(
                new FloorPoint(
                        seeming.mean().xMetres() + raisedMetres * dx,
                        seeming.mean().yMetres() + raisedMetres * dy),
                seeming.covariance().plus(ofHeight(sigmaMetres)));
    }

    /**
     * What an error of height does to the place on the floor, here: it moves along the line of sight.
     *
     * @param sigmaMetres standard deviation of the height of what is seen
     */
    public FloorCovariance ofHeight(double sigmaMetres) {
        double dx = atTwoMetres.xMetres() - atOneMetre.xMetres();
        double dy = atTwoMetres.yMetres() - atOneMetre.yMetres();
        double variance = sigmaMetres * sigmaMetres;
        return new FloorCovariance(variance * dx * dx, variance * dx * dy, variance * dy * dy);
    }

    /** How high the head would be over the point of the line that is nearest to a foot, metres. */
    public double heightOver(FloorPoint foot) {
        double dx = atTwoMetres.xMetres() - atOneMetre.xMetres();
        double dy = atTwoMetres.yMetres() - atOneMetre.yMetres();
        double along = (foot.xMetres() - atOneMetre.xMetres()) * dx + (foot.yMetres() - atOneMetre.yMetres()) * dy;
        return 1 + along / (dx * dx + dy * dy);
    }
}
