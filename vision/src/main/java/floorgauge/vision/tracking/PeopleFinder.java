package floorgauge.vision.tracking;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Pose;
import floorgauge.vision.background.MovingRegions;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.kit.KitSampler;
import floorgauge.vision.network.Detection;
import floorgauge.vision.network.PersonDetector;
import floorgauge.vision.network.PoseEstimator;
import floorgauge.vision.timing.StageTimes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds everyone on the floor in a frame: detector, size and place on the court, pose, feet, kit. Not safe for use by
 * several threads. Owns buffers; close it.
 */
final class PeopleFinder implements AutoCloseable {

    private final PersonDetector detector;
    private final PoseEstimator poses;
    private final TrackingSettings settings;
    private CourtCalibration calibration;
    private DetectionView view;
    private final MovingRegions moving;
    private final StageTimes times;
    private SightingPlacer placer;
    private final KitSampler kits = new KitSampler();

    PeopleFinder(
            CourtCalibration calibration,
            TrackingSettings settings,
            PersonDetector detector,
            PoseEstimator poses,
            MovingRegions moving,
            StageTimes times) {
        this.detector = detector;
        this.poses = poses;
        this.moving = moving;
        this.times = times;
        this.settings = settings;
        this.calibration = calibration;
        this.view = DetectionView.of(calibration, settings.courtMarginMetres());
        this.placer = new SightingPlacer(calibration, settings);
    }

    /** From now on the court lies there; of the same picture size. */
    final void placeOn(CourtCalibration court) {
        if (court.equals(calibration)) {
            return;
        }
        calibration = court;
        view = DetectionView.of(court, settings.courtMarginMetres());
        placer = new SightingPlacer(court, settings);
    }

    DetectionView view() {
        return view;
    }

    /** Everyone on the floor, best seen first. */
    List<Sighting> find(FilmFrame frame) {
        List<Detection> detections =
                times.during("detector", () -> detector.detect(frame.bgr(), view.region(), view.scale()));
        List<ImageBox> everyone = detections.stream().map(Detection::box).toList();
        List<Detection> players = detections.stream()
                .filter(d -> placer.isOnFloor(d.box(), everyone))
                .toList();
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
        for (PoseClaims.Claim claim : PoseClaims.settled(players, found)) {
            sighting(frame, claim, everyone).ifPresent(sightings::add);
        }
        return sightings;
    }

    private Optional<Sighting> sighting(FilmFrame frame, PoseClaims.Claim claim, List<ImageBox> everyone) {
        ImageBox box = claim.detection().box();
        return placer.place(frame.index(), frame.timeSeconds(), claim, everyone)
                .map(placed -> new Sighting(
                        placed,
                        kits.sample(frame.bgr(), box, claim.pose(), SightingPlacer.othersThan(box, everyone)),
                        moving.share(box),
                        placer.heightMetres(placed)));
    }

    @Override
    public void close() {
        kits.close();
    }
}
