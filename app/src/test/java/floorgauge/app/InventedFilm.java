package floorgauge.app;

import floorgauge.app.result.CourtReading;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.RunSettings;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Body;
import floorgauge.court.track.Facing;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.IdentityDoubt;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Pose;
import floorgauge.court.track.Team;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.KeyFrame;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Severity;
import floorgauge.events.finding.SpacingSample;
import floorgauge.events.finding.Threshold;
import floorgauge.events.finding.Tick;
import floorgauge.events.finding.Trail;
import floorgauge.events.finding.TrailPoint;
import floorgauge.events.finding.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A hand-made film of six invented players with one weak screen and one crowded spell, for tests of what becomes of
 * measured values; nothing is measured here. One camera at the side line sees half a court.
 */
public final class InventedFilm {

    /** Size of the picture in pixels. */
    public static final int WIDTH = 1280;

    public static final int HEIGHT = 720;

    private static final int FRAMES = 150;
    private static final double SECONDS_PER_FRAME = 0.04;
    private static final double FOCAL_PIXELS = 900;
    private static final double CAMERA_X = 8;
    private static final double CAMERA_Y = -15;
    private static final double CAMERA_Z = 5;
    private static final double TILT = Math.atan2(CAMERA_Z - 0.5, 15);

    private InventedFilm() {}

    /** Where a point at a height above the floor appears. */
    public static Optional<PixelPoint> pixelAt(FloorPoint point, double height) {
        double dx = point.xMetres() - CAMERA_X;
        double dy = point.yMetres() - CAMERA_Y;
        double dz = height - CAMERA_Z;
        double depth = dy * Math.cos(TILT) - dz * Math.sin(TILT);
        double up = dy * Math.sin(TILT) + dz * Math.cos(TILT);
        if (depth <= 0.1) {
            return Optional.empty();
        }
        return Optional.of(
                new PixelPoint(WIDTH / 2.0 + FOCAL_PIXELS * dx / depth, HEIGHT / 2.0 - FOCAL_PIXELS * up / depth));
    }

    /** Everything at once. */
    public static MeasuredFilm measured() {
        FilmSource film = new FilmSource(
                "Harbour Lights <practice> & \"drill\" 3.mp4",
                Digest.ofText("an invented film"),
                WIDTH,
                HEIGHT,
                FRAMES * SECONDS_PER_FRAME,
                FRAMES);
        CourtReading court = new CourtReading(
                RuleSet.fiba(),
                "lines",
                "good",
                "The lane, the arc and the end line were found, 0.6 px from where they are painted.",
                "still",
                List.of(0.01, 0.0, -6.0, 0.0, 0.02, 3.0, 0.0, 0.001, 1.0),
                point -> pixelAt(point, 0));
        return new MeasuredFilm(
                film, RunSettings.of(Map.of("court", "fiba", "standards", "default")), court, tracks(), findings());
    }

    /** Where player 1 to 6 is; 1 to 3 attack. */
    private static FloorPoint place(int id, double t) {
        double smooth = t / 6;
        return switch (id) {
            case 1 -> new FloorPoint(6.5 + 3.2 * smooth, -3 + 5.2 * smooth);
            case 2 -> new FloorPoint(8.6 + 0.4 * Math.sin(t), 0.6 - 0.3 * smooth);
            case 3 -> new FloorPoint(11.5 - 2.2 * smooth, 5.6 - 3.4 * smooth);
            case 4 -> new FloorPoint(7.2 + 3.1 * smooth, -2.2 + 4.5 * smooth);
            case 5 -> new FloorPoint(9.6, 0.4 - 0.2 * smooth);
            default -> new FloorPoint(11.9 - 1.8 * smooth, 4.1 - 2 * smooth);
        };
    }

    /** The tracks; nobody is seen in the first frame, player 6 is predicted for a while. */
    public static FilmTracks tracks() {
        return tracks(1 / SECONDS_PER_FRAME);
    }

    /** The same film at another rate of frames a second. */
    public static FilmTracks tracks(double framesPerSecond) {
        long frames = Math.round(FRAMES * SECONDS_PER_FRAME * framesPerSecond);
        SortedMap<Long, Double> times = new TreeMap<>();
        for (long frame = 0; frame < frames; frame++) {
            times.put(frame, frame / framesPerSecond);
        }
        List<PlayerTrack> players = new ArrayList<>();
        for (int id = 1; id <= 6; id++) {
            List<PlayerObservation> observations = new ArrayList<>();
            for (long frame = 1; frame < frames; frame++) {
                observations.add(observation(id, frame, times.get(frame)));
            }
            List<IdentityDoubt> doubts = id == 4 ? List.of(new IdentityDoubt(5, 2.4, 3.0, 0.08)) : List.of();
            players.add(new PlayerTrack(id, id <= 3 ? Team.FIRST : Team.SECOND, 0.97, observations, doubts));
        }
        return new FilmTracks(times, players, Optional.empty());
    }

    private static PlayerObservation observation(int id, long frame, double time) {
        FloorPoint place = place(id, time);
        PixelPoint foot = pixelAt(place, 0).orElseThrow();
        PixelPoint head = pixelAt(place, 1.95).orElseThrow();
        double height = foot.y() - head.y();
        boolean predicted = id == 6 && time > 2.82 && time < 3.18;
        ImageBox box = new ImageBox(foot.x() - height * 0.22, head.y(), height * 0.44, height);
        FloorEstimate left = new FloorEstimate(
                new FloorPoint(place.xMetres() - 0.15, place.yMetres()), FloorCovariance.isotropic(0.09));
        Body body = id == 6
                ? Body.UNSEEN
                : new Body(
                        Optional.of(left),
                        Optional.empty(),
                        Optional.of(new Facing(1.2, 0.3)),
                        OptionalDouble.of(1.1),
                        OptionalDouble.of(0.8));
        return new PlayerObservation(
                frame,
                time,
                new FloorEstimate(place, new FloorCovariance(0.01 * id, 0.002, 0.02)),
                predicted ? FootSource.PREDICTED : FootSource.ANKLES,
                Optional.of(box),
                predicted ? Optional.empty() : Optional.of(pose(place)),
                body,
                predicted ? 0 : 0.9);
    }

    private static Pose pose(FloorPoint place) {
        List<Keypoint> keypoints = new ArrayList<>();
        for (Joint joint : Joint.values()) {
            String name = joint.name();
            double side = name.startsWith("LEFT") ? -1 : name.startsWith("RIGHT") ? 1 : 0;
            double height = name.endsWith("ANKLE")
                    ? 0.1
                    : name.endsWith("KNEE")
                            ? 0.55
                            : name.endsWith("HIP")
                                    ? 1.0
                                    : name.endsWith("WRIST")
                                            ? 1.05
                                            : name.endsWith("ELBOW") ? 1.25 : name.endsWith("SHOULDER") ? 1.55 : 1.8;
            double out = name.endsWith("WRIST") || name.endsWith("ELBOW") ? 0.36 : name.endsWith("KNEE") ? 0.2 : 0.17;
            FloorPoint at = new FloorPoint(place.xMetres() + side * out, place.yMetres());
            keypoints.add(new Keypoint(pixelAt(at, height).orElseThrow(), 0.8));
        }
        return new Pose(keypoints);
    }

    private static Findings findings() {
        Possession possession = new Possession(
                1,
                0.04,
                5.96,
                Team.FIRST,
                0.93,
                CourtEnd.POSITIVE_X,
                List.of(1, 2, 3),
                List.of(4, 5, 6),
                false,
                "end of film");
        PossessionFindings measured = new PossessionFindings(
                possession,
                List.of(weakScreen(), crowded()),
                spacing(),
                trails(),
                List.of(new NotSeen("weak side", "two players stood behind others from 4.0 to 4.4 s")));
        return new Findings(
                List.of(measured),
                List.of(new NotSeen("ball", "the ball was not tracked, so passes are not measured")));
    }

    private static Finding weakScreen() {
        Figure gap = Figure.of("gap", 0.42, 0.08, Unit.METRES)
                .against(new Threshold("contactGapMetres", 0.10, Threshold.Side.AT_MOST));
        Figure quality = Figure.of("quality", 41, 6, Unit.POINTS)
                .against(new Threshold("weakScreenPoints", 50, Threshold.Side.AT_LEAST));
        Figure separation = Figure.of("separation gained", 0.35, 0.14, Unit.METRES);
        Figure lost = Figure.of("defender's time lost", 0.18, 0.06, Unit.SECONDS);
        return new Finding(
                FindingKind.WEAK_SCREEN,
                "down screen",
                1.6,
                4.2,
                List.of(
                        new RoleHolder(Role.SCREENER, 2),
                        new RoleHolder(Role.USER, 1),
                        new RoleHolder(Role.USER_DEFENDER, 4)),
                List.of(quality, gap, separation, lost, Figure.plain("still before contact", 0.62, Unit.SHARE)),
                0.91,
                Optional.of(new Severity(0.6, separation)),
                "#2's down screen for #1 left a gap of 0.42 ± 0.08 m to #4, who lost 0.18 ± 0.06 s.",
                List.of(new KeyFrame(2.0, "set"), new KeyFrame(2.6, "closest"), new KeyFrame(3.8, "after")),
                List.of(new Tick(2.0, 0.05, "set"), new Tick(2.6, 0.03, "closest"), new Tick(3.0, 0.08, "free")),
                List.of(
                        new Mark.Distance(2.6, 2, 4, gap),
                        new Mark.Delay(2.6, 3.0, lost),
                        new Mark.Path(1, 1.6, 4.2, Figure.of("speed", 1.9, 0.2, Unit.METRES_PER_SECOND)),
                        new Mark.DistanceToPoint(
                                3.8, 1, new FloorPoint(12.425, 0), Figure.of("to the rim", 4.1, 0.1, Unit.METRES))),
                List.of(new NotSeen("base", "both of #2's ankles were hidden at contact")));
    }

    private static Finding crowded() {
        Figure distance = Figure.of("least distance", 1.62, 0.11, Unit.METRES)
                .against(new Threshold("crowdedMetres", 2.4, Threshold.Side.AT_LEAST));
        Figure area = Figure.of("floor spanned", 3.4, 0.6, Unit.SQUARE_METRES);
        return new Finding(
                FindingKind.CROWDED_FLOOR,
                "",
                4.4,
                5.9,
                List.of(new RoleHolder(Role.ATTACKER, 1), new RoleHolder(Role.ATTACKER, 3)),
                List.of(distance, Figure.of("for", 1.5, 0.1, Unit.SECONDS)),
                0.98,
                Optional.of(new Severity(0.4, Figure.of("for", 1.5, 0.1, Unit.SECONDS))),
                "#1 and #3 stood 1.62 ± 0.11 m apart for 1.50 ± 0.10 s.",
                List.of(new KeyFrame(4.48, "begins"), new KeyFrame(5.2, "closest"), new KeyFrame(5.88, "ends")),
                List.of(),
                List.of(new Mark.Distance(5.2, 1, 3, distance), new Mark.Area(5.2, List.of(1, 2, 3), area)),
                List.of());
    }

    private static List<SpacingSample> spacing() {
        List<SpacingSample> samples = new ArrayList<>();
        for (int i = 1; i < FRAMES; i++) {
            double time = i * SECONDS_PER_FRAME;
            boolean seen = i < 60 || i > 70;
            double least = 3.4 - 0.4 * time + 0.3 * Math.sin(3 * time);
            samples.add(new SpacingSample(
                    time,
                    seen ? 3 : 1,
                    seen ? OptionalDouble.of(least) : OptionalDouble.empty(),
                    seen ? OptionalDouble.of(0.15) : OptionalDouble.empty(),
                    seen ? OptionalDouble.of(least + 1.2) : OptionalDouble.empty(),
                    seen ? 22 - 3 * time : 0,
                    1,
                    0,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    time > 2 && time < 3));
        }
        return samples;
    }

    private static List<Trail> trails() {
        List<Trail> trails = new ArrayList<>();
        for (int id = 1; id <= 6; id++) {
            List<TrailPoint> points = new ArrayList<>();
            for (int i = 1; i < FRAMES; i++) {
                if (id != 6 || i < 60 || i > 80) {
                    double error = id == 5 ? 0.6 : i > 100 && id == 3 ? 0.3 : 0.1;
                    points.add(new TrailPoint(
                            i * SECONDS_PER_FRAME,
                            new FloorEstimate(place(id, i * SECONDS_PER_FRAME), FloorCovariance.isotropic(error)),
                            1));
                }
            }
            trails.add(new Trail(id, id <= 3, points));
        }
        return trails;
    }
}
