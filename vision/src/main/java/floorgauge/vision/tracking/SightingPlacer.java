package floorgauge.vision.tracking;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.Body;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.Pose;
import floorgauge.vision.body.BodyReader;
import floorgauge.vision.body.FootFinder;
import floorgauge.vision.body.FootPoint;
import floorgauge.vision.body.UnderHead;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** From what the networks gave to places on the floor: whom to keep, where the feet stand, what the body says. */
final class SightingPlacer {

    private static final double STATURE_METRES = 1.85;

    /** A box of another height than this, over an upright player's where it stands, is not a player. */
    private static final double LEAST_HEIGHT = 0.35;

    private static final double MOST_HEIGHT = 1.5;

    private final CourtCalibration calibration;
    private final TrackingSettings settings;
    private final FootFinder feet;
    private final BodyReader bodies;

    SightingPlacer(CourtCalibration calibration, TrackingSettings settings) {
        this.calibration = calibration;
        this.settings = settings;
        this.feet = new FootFinder(calibration);
        this.bodies = new BodyReader(calibration);
    }

    /** By its box alone, before the pose network runs: as high as a player there would be, and not far off the court. */
    boolean isOnFloor(ImageBox box, List<ImageBox> everyone) {
        Optional<FootPoint> foot = feet.find(box, Optional.empty(), everyone);
        if (foot.isEmpty()) {
            return false;
        }
        FloorPoint point = foot.get().position().mean();
        double slack = foot.get().position().covariance().standardErrorMetres();
        OptionalDouble upright = calibration.heightInPixels(point, STATURE_METRES);
        boolean fits = upright.isEmpty()
                || box.height() >= LEAST_HEIGHT * upright.getAsDouble()
                        && box.height() <= MOST_HEIGHT * upright.getAsDouble();
        return fits && CourtArea.outsideBy(calibration.rules(), point) <= settings.courtMarginMetres() + slack;
    }

    /**
     * A person in one frame.
     *
     * @param everyone all boxes of the frame, who may hide one another
     * @return empty for who stands off the court
     */
    Optional<PlayerObservation> place(
            long frame, double timeSeconds, PoseClaims.Claim person, List<ImageBox> everyone) {
        ImageBox box = person.detection().box();
        Optional<FootPoint> foot = feet.find(box, person.pose(), othersThan(box, everyone));
        if (foot.isEmpty()) {
            return Optional.empty();
        }
        FloorPoint point = foot.get().position().mean();
        if (CourtArea.outsideBy(calibration.rules(), point) > settings.courtMarginMetres()) {
            return Optional.empty();
        }
        return Optional.of(new PlayerObservation(
                frame,
                timeSeconds,
                foot.get().position(),
                foot.get().source(),
                Optional.of(box),
                person.pose(),
                person.pose().map(pose -> bodies.read(box, pose, point)).orElse(Body.UNSEEN),
                person.detection().score()));
    }

    /** How high the person stands over the feet; empty where the feet were not seen or the box ends at the picture's top. */
    OptionalDouble heightMetres(PlayerObservation seen) {
        if (seen.source() != FootSource.ANKLES
                || seen.box().isEmpty()
                || seen.box().get().top() <= 1) {
            return OptionalDouble.empty();
        }
        FloorPoint foot = seen.foot().mean();
        OptionalDouble upright = calibration.heightInPixels(foot, STATURE_METRES);
        if (upright.isEmpty()) {
            return OptionalDouble.empty();
        }
        double pixels = calibration.pixelAt(foot).y() - seen.box().get().top();
        return OptionalDouble.of(STATURE_METRES * pixels / upright.getAsDouble());
    }

    /** The floor below the top of the box, for any height; empty under raised arms and where the box ends at the picture's top. */
    Optional<UnderHead> underHead(ImageBox box, Optional<Pose> pose) {
        return box.top() <= 1 ? Optional.empty() : feet.underHead(box, pose);
    }

    static List<ImageBox> othersThan(ImageBox box, List<ImageBox> everyone) {
        return everyone.stream().filter(b -> b != box).toList();
    }
}
