package floorgauge.vision.tracking;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.Body;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.Pose;
import floorgauge.vision.background.MovingRegions;
import floorgauge.vision.body.BodyReader;
import floorgauge.vision.body.FootFinder;
import floorgauge.vision.body.FootPoint;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.kit.KitSampler;
import floorgauge.vision.network.Detection;
import floorgauge.vision.network.PersonDetector;
import floorgauge.vision.network.PoseEstimator;
import floorgauge.vision.timing.StageTimes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds everyone on the floor in a frame: detector, size and place on the court, pose, feet, kit. Not safe for use by
 * several threads. Owns buffers; close it.
 */
final class PeopleFinder implements AutoCloseable {

    private static final double STATURE_METRES = 1.85;

    /** A box of another height than this, over an upright player's where it stands, is not a player. */
    private static final double LEAST_HEIGHT = 0.35;

    private static final double MOST_HEIGHT = 1.5;

    private final CourtCalibration calibration;
    private final TrackingSettings settings;
    private final PersonDetector detector;
    private final PoseEstimator poses;
    private final DetectionView view;
    private final MovingRegions moving;
    private final StageTimes times;
    private final FootFinder feet;
    private final BodyReader bodies;
    private final KitSampler kits = new KitSampler();

    PeopleFinder(
            CourtCalibration calibration,
            TrackingSettings settings,
            PersonDetector detector,
            PoseEstimator poses,
            MovingRegions moving,
            StageTimes times) {
        this.calibration = calibration;
        this.settings = settings;
        this.detector = detector;
        this.poses = poses;
        this.moving = moving;
        this.times = times;
        this.view = DetectionView.of(calibration, settings.courtMarginMetres());
        this.feet = new FootFinder(calibration);
        this.bodies = new BodyReader(calibration);
    }

    DetectionView view() {
        return view;
    }

    /** Everyone on the floor, best seen first. */
    List<Sighting> find(FilmFrame frame) {
        List<Detection> detections =
                times.during("detector", () -> detector.detect(frame.bgr(), view.region(), view.scale()));
        List<ImageBox> everyone = detections.stream().map(Detection::box).toList();
        List<Detection> players =
                detections.stream().filter(d -> isOnFloor(d.box(), everyone)).toList();
        List<ImageBox> boxes = players.stream().map(Detection::box).toList();
        List<Pose> found = times.during("poses", () -> poses.estimate(frame.bgr(), boxes));
        return placed(frame, everyone, players, found);
    }

    /**
     * Puts people on the floor.
     *
     * @param everyone all boxes of the frame, who may hide one another
     * @param players those who may be on the floor
     * @param found their poses
     */
    List<Sighting> placed(FilmFrame frame, List<ImageBox> everyone, List<Detection> players, List<Pose> found) {
        moving.look(frame.bgr(), frame.timeSeconds());
        List<Sighting> sightings = new ArrayList<>();
        for (int i = 0; i < players.size(); i++) {
            sighting(frame, players.get(i), found.get(i), everyone).ifPresent(sightings::add);
        }
        return sightings;
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

    private Optional<Sighting> sighting(FilmFrame frame, Detection detection, Pose pose, List<ImageBox> everyone) {
        ImageBox box = detection.box();
        List<ImageBox> others = everyone.stream().filter(b -> b != box).toList();
        Optional<FootPoint> foot = feet.find(box, Optional.of(pose), others);
        if (foot.isEmpty()) {
            return Optional.empty();
        }
        FloorPoint point = foot.get().position().mean();
        if (CourtArea.outsideBy(calibration.rules(), point) > settings.courtMarginMetres()) {
            return Optional.empty();
        }
        Body body = bodies.read(box, pose, point);
        return Optional.of(new Sighting(
                new PlayerObservation(
                        frame.index(),
                        frame.timeSeconds(),
                        foot.get().position(),
                        foot.get().source(),
                        Optional.of(box),
                        Optional.of(pose),
                        body,
                        detection.score()),
                kits.sample(frame.bgr(), box, Optional.of(pose), others),
                moving.share(box)));
    }

    @Override
    public void close() {
        kits.close();
    }
}
