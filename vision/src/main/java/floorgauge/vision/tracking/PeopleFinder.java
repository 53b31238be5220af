package floorgauge.vision.tracking;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Pose;
import floorgauge.vision.background.MovingRegions;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.kit.KitSampler;
import floorgauge.vision.network.Detection;
import floorgauge.vision.network.NumberBelief;
import floorgauge.vision.network.NumberReader;
import floorgauge.vision.network.PersonDetector;
import floorgauge.vision.network.PoseEstimator;
import floorgauge.vision.number.JerseyWatcher;
import floorgauge.vision.timing.StageTimes;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.opencv.core.Mat;

/**
 * Finds everyone on the floor, frame by frame: detector, size and place on the court, pose, feet, kit. Not safe for use by
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
    private final JerseyWatcher jerseys;
    private final double confidentScore;
    private Optional<Found> before = Optional.empty();
    private Optional<Picture> waiting = Optional.empty();

    PeopleFinder(
            CourtCalibration calibration,
            TrackingSettings settings,
            PersonDetector detector,
            PoseEstimator poses,
            MovingRegions moving,
            NumberReader numbers,
            double confidentScore,
            StageTimes times) {
        this.jerseys = new JerseyWatcher(numbers);
        this.confidentScore = confidentScore;
        this.detector = detector;
        this.poses = poses;
        this.moving = moving;
        this.times = times;
        this.settings = settings;
        this.calibration = calibration;
        this.view = viewOf(calibration);
        this.placer = new SightingPlacer(calibration, settings);
    }

    private DetectionView viewOf(CourtCalibration court) {
        if (!settings.parts().scale()) {
            return DetectionView.whole(court);
        }
        return settings.whom() == Whom.EVERYONE
                ? DetectionView.everywhere(court, settings.courtMarginMetres())
                : DetectionView.of(court, settings.courtMarginMetres());
    }

    /**
     * From now on the court lies there; of the same picture size. While the camera moves, no frame waits for another.
     *
     * @return the frame that waited
     */
    List<Look> placeOn(CourtCalibration court) {
        if (court.equals(calibration)) {
            return List.of();
        }
        List<Look> rest = rest();
        before = Optional.empty();
        calibration = court;
        view = viewOf(court);
        placer = new SightingPlacer(court, settings);
        return rest;
    }

    /**
     * Takes the next frame in which people are wanted. Every second one waits for the one after it, which often tells where
     * everyone was without the detector.
     *
     * @return the frames that are done, in order of time: none, one or two
     */
    List<Look> next(FilmFrame frame) {
        if (before.isPresent() && waiting.isEmpty() && settings.parts().betweenDetections()) {
            waiting = Optional.of(Picture.copied(frame));
            return List.of();
        }
        Picture now = Picture.of(frame);
        Optional<Picture> between = waiting;
        Optional<Found> earlier = before;
        waiting = Optional.empty();
        Found later = detect(now);
        before = Optional.of(later);
        if (between.isEmpty()) {
            return looks(List.of(now), List.of(later));
        }
        try (Picture middle = between.get()) {
            return looks(List.of(middle, now), List.of(between(earlier.orElseThrow(), later, middle), later));
        }
    }

    /** The frame that still waits, when the film ends or the court moves on. */
    List<Look> rest() {
        if (waiting.isEmpty()) {
            return List.of();
        }
        try (Picture last = waiting.get()) {
            waiting = Optional.empty();
            Found found = detect(last);
            before = Optional.of(found);
            return looks(List.of(last), List.of(found));
        }
    }

    /** A frame's picture. Copies are owned, others are the film's own buffer. */
    private record Picture(Mat bgr, long frame, double timeSeconds, boolean owned) implements AutoCloseable {

        static Picture of(FilmFrame frame) {
            return new Picture(frame.bgr(), frame.index(), frame.timeSeconds(), false);
        }

        static Picture copied(FilmFrame frame) {
            return new Picture(frame.bgr().clone(), frame.index(), frame.timeSeconds(), true);
        }

        @Override
        public void close() {
            if (owned) {
                bgr.release();
            }
        }
    }

    /** Everyone in a frame, wherever they stand. */
    private record Found(double timeSeconds, List<Detection> detections) {

        List<ImageBox> boxes() {
            return detections.stream().map(Detection::box).toList();
        }
    }

    private Found detect(Picture picture) {
        return new Found(
                picture.timeSeconds(),
                times.during("detector", () -> detector.detect(picture.bgr(), view.region(), view.scale())));
    }

    private Found between(Found earlier, Found later, Picture picture) {
        double seconds = later.timeSeconds() - earlier.timeSeconds();
        double share = (picture.timeSeconds() - earlier.timeSeconds()) / seconds;
        return BetweenDetections.of(earlier.detections(), later.detections(), seconds, share, confidentScore)
                .map(people -> new Found(picture.timeSeconds(), people))
                .orElseGet(() -> detect(picture));
    }

    /** The poses of all frames together, so that the network's batches are full. */
    private List<Look> looks(List<Picture> pictures, List<Found> found) {
        List<List<Detection>> players = found.stream().map(this::players).toList();
        List<List<ImageBox>> boxes = players.stream()
                .map(p -> p.stream().map(Detection::box).toList())
                .toList();
        List<Mat> mats = pictures.stream().map(Picture::bgr).toList();
        List<Look> looks = new ArrayList<>();
        if (settings.parts().pose()) {
            List<List<Pose>> joints = times.during("poses", () -> poses.estimate(mats, boxes));
            for (int i = 0; i < pictures.size(); i++) {
                looks.add(look(
                        pictures.get(i),
                        found.get(i),
                        LegClaims.settled(PoseClaims.settled(players.get(i), joints.get(i)))));
            }
        } else {
            for (int i = 0; i < pictures.size(); i++) {
                looks.add(look(pictures.get(i), found.get(i), PoseClaims.none(players.get(i))));
            }
        }
        return looks;
    }

    private List<Detection> players(Found found) {
        List<ImageBox> everyone = found.boxes();
        return found.detections().stream()
                .filter(d -> placer.isOnFloor(d.box(), everyone))
                .toList();
    }

    private Look look(Picture picture, Found found, List<PoseClaims.Claim> claims) {
        moving.look(picture.bgr(), picture.timeSeconds());
        List<Optional<Pose>> joints =
                claims.stream().map(PoseClaims.Claim::pose).toList();
        List<Optional<NumberBelief>> numbers =
                times.during("numbers", () -> jerseys.look(picture.bgr(), picture.timeSeconds(), joints));
        List<ImageBox> everyone = found.boxes();
        Map<Detection, Fate> fates = new IdentityHashMap<>();
        players(found).forEach(d -> fates.put(d, Fate.SECOND_BOX));
        List<Sighting> sightings = new ArrayList<>();
        for (int i = 0; i < claims.size(); i++) {
            Optional<Sighting> sighting = sighting(picture, claims.get(i), everyone, numbers.get(i));
            fates.put(claims.get(i).detection(), sighting.isPresent() ? Fate.FOLLOWED : Fate.OFF_THE_FLOOR);
            sighting.ifPresent(sightings::add);
        }
        return new Look(picture.frame(), picture.timeSeconds(), sightings, dropped(picture, found, fates));
    }

    /** Everything found that is no sighting. */
    private static List<DetectionFate> dropped(Picture picture, Found found, Map<Detection, Fate> fates) {
        List<DetectionFate> dropped = new ArrayList<>();
        for (Detection d : found.detections()) {
            Fate fate = fates.getOrDefault(d, Fate.OFF_THE_FLOOR);
            if (fate != Fate.FOLLOWED) {
                dropped.add(new DetectionFate(picture.frame(), picture.timeSeconds(), d.box(), d.score(), fate, 0));
            }
        }
        return dropped;
    }

    private Optional<Sighting> sighting(
            Picture picture, PoseClaims.Claim claim, List<ImageBox> everyone, Optional<NumberBelief> number) {
        ImageBox box = claim.detection().box();
        return placer.place(picture.frame(), picture.timeSeconds(), claim, everyone)
                .map(placed -> new Sighting(
                        placed,
                        kits.sample(picture.bgr(), box, claim.pose(), SightingPlacer.othersThan(box, everyone)),
                        moving.share(box),
                        placer.heightMetres(placed),
                        number,
                        placer.underHead(box, claim.pose())));
    }

    @Override
    public void close() {
        waiting.ifPresent(Picture::close);
        kits.close();
    }
}
