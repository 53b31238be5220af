package floorgauge.vision.tracking;

import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Pose;
import floorgauge.vision.background.BackgroundModel;
import floorgauge.vision.background.MovingRegions;
import floorgauge.vision.kit.KitSampler;
import floorgauge.vision.network.Detection;
import floorgauge.vision.network.NumberBelief;
import floorgauge.vision.number.JerseyLook;
import floorgauge.vision.timing.StageTimes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.opencv.core.Mat;

/**
 * Finds everyone on the floor in one frame: detector, size and place on the court, pose, feet, kit. Keeps nothing from one frame to
 * the next, so frames may come in any order. Not safe for use by several threads. Owns buffers; close it.
 */
final class FrameLooker implements AutoCloseable {

    private final Networks networks;
    private final boolean withPoses;
    private final MovingRegions moving;
    private final KitSampler kits = new KitSampler();
    private final StageTimes times;

    /**
     * @param networks stay the caller's to close
     * @param background of the film; stays the caller's to close
     * @param times added to
     */
    FrameLooker(Networks networks, TrackingSettings settings, BackgroundModel background, StageTimes times) {
        this.networks = networks;
        this.withPoses = settings.parts().pose();
        this.moving = new MovingRegions(background);
        this.times = times;
    }

    /**
     * A frame to look at.
     *
     * @param bgr 8-bit BGR
     * @param frame its number in the film
     * @param timeSeconds its presentation time
     * @param floor where the court lies in it
     * @param withNumbers whether jerseys are read
     */
    record Frame(Mat bgr, long frame, double timeSeconds, FloorView floor, boolean withNumbers) {}

    /** Everyone in it. */
    Look look(Frame frame) {
        return times.during("feet, bodies, kits", () -> lookAt(frame));
    }

    private Look lookAt(Frame frame) {
        DetectionView view = frame.floor().view();
        List<Detection> found =
                times.during("detector", () -> networks.people().detect(frame.bgr(), view.region(), view.scale()));
        List<ImageBox> everyone = found.stream().map(Detection::box).toList();
        List<Detection> players = found.stream()
                .filter(d -> frame.floor().placer().isOnFloor(d.box(), everyone))
                .toList();
        List<PoseClaims.Claim> claims = claims(frame, players);
        List<Optional<NumberBelief>> numbers = numbers(frame, claims);
        moving.look(frame.bgr(), frame.timeSeconds());
        Map<Detection, Fate> fates = new IdentityHashMap<>();
        players.forEach(d -> fates.put(d, Fate.SECOND_BOX));
        List<Sighting> sightings = new ArrayList<>();
        for (int i = 0; i < claims.size(); i++) {
            Optional<Sighting> sighting = sighting(frame, claims.get(i), everyone, numbers.get(i));
            fates.put(claims.get(i).detection(), sighting.isPresent() ? Fate.FOLLOWED : Fate.OFF_THE_FLOOR);
            sighting.ifPresent(sightings::add);
        }
        return new Look(frame.frame(), frame.timeSeconds(), sightings, dropped(frame, found, fates));
    }

    private List<PoseClaims.Claim> claims(Frame frame, List<Detection> players) {
        if (!withPoses) {
            return PoseClaims.none(players);
        }
        List<ImageBox> boxes = players.stream().map(Detection::box).toList();
        List<Pose> joints = times.during("poses", () -> networks.poses().estimate(frame.bgr(), boxes));
        return LegClaims.settled(PoseClaims.settled(players, joints));
    }

    private List<Optional<NumberBelief>> numbers(Frame frame, List<PoseClaims.Claim> claims) {
        if (!frame.withNumbers()) {
            return Collections.nCopies(claims.size(), Optional.empty());
        }
        List<Optional<Pose>> joints =
                claims.stream().map(PoseClaims.Claim::pose).toList();
        return times.during("numbers", () -> JerseyLook.read(networks.numbers(), frame.bgr(), joints));
    }

    /** Everything found that is no sighting. */
    private static List<DetectionFate> dropped(Frame frame, List<Detection> found, Map<Detection, Fate> fates) {
        List<DetectionFate> dropped = new ArrayList<>();
        for (Detection d : found) {
            Fate fate = fates.getOrDefault(d, Fate.OFF_THE_FLOOR);
            if (fate != Fate.FOLLOWED) {
                dropped.add(new DetectionFate(frame.frame(), frame.timeSeconds(), d.box(), d.score(), fate, 0));
            }
        }
        return dropped;
    }

    private Optional<Sighting> sighting(
            Frame frame, PoseClaims.Claim claim, List<ImageBox> everyone, Optional<NumberBelief> number) {
        ImageBox box = claim.detection().box();
        SightingPlacer placer = frame.floor().placer();
        return placer.place(frame.frame(), frame.timeSeconds(), claim, everyone)
                .map(placed -> new Sighting(
                        placed,
                        kits.sample(frame.bgr(), box, claim.pose(), SightingPlacer.othersThan(box, everyone)),
                        moving.share(box),
                        placer.heightMetres(placed),
                        number,
                        placer.underHead(box, claim.pose())));
    }

    @Override
    public void close() {
        moving.close();
        kits.close();
    }
}
