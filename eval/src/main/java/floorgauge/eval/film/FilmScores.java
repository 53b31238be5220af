package floorgauge.eval.film;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.BallObservation;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerSighting;
import floorgauge.eval.ball.BallScores;
import floorgauge.eval.ball.BallTolerance;
import floorgauge.eval.court.CourtScores;
import floorgauge.eval.court.FloorErrors;
import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventMark;
import floorgauge.eval.events.Identities;
import floorgauge.eval.events.TrackIdentities;
import floorgauge.eval.pose.CorrectKeypoints;
import floorgauge.eval.pose.PoseFrame;
import floorgauge.eval.pose.PoseScores;
import floorgauge.eval.pose.PosedPerson;
import floorgauge.eval.tracking.BoxSimilarity;
import floorgauge.eval.tracking.ClearMatching;
import floorgauge.eval.tracking.MotChallengeRow;
import floorgauge.eval.tracking.SimilarityTable;
import floorgauge.eval.tracking.TrackSequence;
import floorgauge.eval.tracking.TrackingScores;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.scenario.PlayedScene;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.function.BiConsumer;

/**
 * A measurement of a held-out film against its truth. A court has no first and second half: one found turned by 180 degrees is
 * the same court, and positions are compared after the turn.
 */
public final class FilmScores {

    private static final double GRID_METRES = 0.5;

    /** The ball's own width in a usual picture of 1280 pixels, and the time of a frame. */
    private static final BallTolerance BALL = new BallTolerance(10, 0.04);

    private static final double SAME_BOX = 0.5;
    private static final double BOX_SHARE = 0.1;
    private static final double SECONDS_PER_HOUR = 3600;

    private final HeldOutFilm film;
    private final RenderedTruth truth;
    private final FilmMeasurement measured;
    private final boolean turned;
    private final CourtScores court;

    /** Compares the court at once, for everything on the floor depends on its turn. */
    public FilmScores(HeldOutFilm film, RenderedTruth truth, FilmMeasurement measured) {
        this.film = Objects.requireNonNull(film, "film");
        this.truth = Objects.requireNonNull(truth, "truth");
        this.measured = Objects.requireNonNull(measured, "measured");
        Camera camera = film.plan().path().at(0);
        CourtScores straight = court(camera, measured.court(), false);
        CourtScores half = court(camera, measured.court(), true);
        turned = half.everywhere().medianMetres() < straight.everywhere().medianMetres();
        court = turned ? half : straight;
    }

    private static CourtScores court(Camera camera, CourtCalibration result, boolean turned) {
        return CourtScores.of(
                point -> {
                    FloorPoint at = turned ? point.turnedHalf() : point;
                    return camera.pixelAt(at.xMetres(), at.yMetres(), 0);
                },
                result.rules(),
                result,
                GRID_METRES);
    }

    /** Which film. */
    public HeldOutFilm film() {
        return film;
    }

    /** What the program says of its court. */
    public CalibrationStatus courtStatus() {
        return measured.court().status();
    }

    /** The court at the film's first instant. */
    public CourtScores court() {
        return court;
    }

    /** How the boxes of players compare; empty where nothing was tracked. */
    public Optional<TrackingScores> tracks() {
        return table().map(t -> TrackingScores.of(t, SAME_BOX));
    }

    private Optional<SimilarityTable> table() {
        return measured.tracked().map(t -> {
            TrackSequence<ImageBox> result = TrackSequence.boxes(t.tracks());
            long last = Math.max(0, result.frames().size() - 1L);
            return SimilarityTable.of(
                    truth.players().boxes(HeldOutFilm.FRAMES_PER_SECOND, last), result, new BoxSimilarity());
        });
    }

    /** Foot points of players against where they stand, over boxes that overlap by half; none where nothing was tracked. */
    public FloorErrors feet() {
        List<FloorErrors.Sample> samples = new ArrayList<>();
        forEachMatch((seen, there) -> there.floor().ifPresent(at -> samples.add(sample(at, seen.foot()))));
        return FloorErrors.of(samples);
    }

    /** Ankles of players against where they are, of feet that stand and that the pose shows, over the same boxes. */
    public FloorErrors ankles() {
        List<FloorErrors.Sample> samples = new ArrayList<>();
        forEachMatch((seen, there) -> {
            RenderedTruth.Ankles ankles =
                    truth.ankles().getOrDefault(there.frame(), Map.of()).get(there.id());
            if (ankles != null) {
                addBoth(ankles.left(), seen.body().leftAnkle(), samples);
                addBoth(ankles.right(), seen.body().rightAnkle(), samples);
            }
        });
        return FloorErrors.of(samples);
    }

    private void addBoth(Optional<FloorPoint> at, Optional<FloorEstimate> seen, List<FloorErrors.Sample> samples) {
        if (at.isPresent() && seen.isPresent()) {
            samples.add(sample(at.get(), seen.get()));
        }
    }

    private FloorErrors.Sample sample(FloorPoint at, FloorEstimate seen) {
        return new FloorErrors.Sample(turned ? at.turnedHalf() : at, seen);
    }

    private void forEachMatch(BiConsumer<PlayerObservation, MotChallengeRow> match) {
        Map<Long, List<MotChallengeRow>> rows = new HashMap<>();
        truth.players()
                .rows()
                .forEach(r ->
                        rows.computeIfAbsent(r.frame(), f -> new ArrayList<>()).add(r));
        tracks(measured)
                .ifPresent(tracks -> tracks.frames()
                        .forEach(frame -> frame.players()
                                .forEach(p -> best(p.observation(), rows.getOrDefault(frame.frame(), List.of()))
                                        .ifPresent(r -> match.accept(p.observation(), r)))));
    }

    private static Optional<MotChallengeRow> best(PlayerObservation seen, List<MotChallengeRow> there) {
        MotChallengeRow best = null;
        double most = SAME_BOX;
        for (MotChallengeRow row : there) {
            double overlap = seen.box().isPresent() && row.box().isPresent()
                    ? seen.box().get().intersectionOverUnion(row.box().get())
                    : 0;
            if (overlap >= most) {
                most = overlap;
                best = row;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Poses in the frames in which the pose network ran. */
    public PoseScores poses() {
        return PoseScores.of(poseFrames());
    }

    /** Share of joints within a tenth of the person's box, over boxes of joints that overlap by half. */
    public double correctKeypoints() {
        CorrectKeypoints correct = CorrectKeypoints.ofBox(BOX_SHARE);
        for (PoseFrame frame : poseFrames()) {
            for (PoseFrame.Truth wanted : frame.truths()) {
                if (!wanted.ignored()) {
                    frame.results().stream()
                            .map(PoseFrame.Result::person)
                            .filter(r -> r.box()
                                            .intersectionOverUnion(
                                                    wanted.person().box())
                                    >= SAME_BOX)
                            .findFirst()
                            .ifPresent(r -> correct.add(wanted.person(), r.pose()));
                }
            }
        }
        return correct.share();
    }

    private List<PoseFrame> poseFrames() {
        SortedMap<Long, List<PoseFrame.Truth>> wanted = truth.poses();
        return tracks(measured).stream()
                .flatMap(FilmTracks::frames)
                .filter(f -> !results(f).isEmpty())
                .map(f -> new PoseFrame(wanted.getOrDefault(f.frame(), List.of()), results(f)))
                .toList();
    }

    private static List<PoseFrame.Result> results(FloorFrame frame) {
        return frame.players().stream()
                .map(PlayerSighting::observation)
                .filter(o -> o.pose().isPresent())
                .map(o -> new PoseFrame.Result(PosedPerson.result(o.pose().get()), o.score()))
                .toList();
    }

    /** Empty where the ball was not looked for. */
    public Optional<BallScores> ball() {
        return tracks(measured)
                .flatMap(FilmTracks::ball)
                .map(found -> BallScores.of(truth.ball(), turned(found), BALL));
    }

    private List<BallObservation> turned(List<BallObservation> found) {
        return !turned
                ? found
                : found.stream()
                        .map(b -> new BallObservation(
                                b.frame(),
                                b.timeSeconds(),
                                b.floor().turnedHalf(),
                                b.heightMetres(),
                                b.position(),
                                b.heldBy(),
                                b.probability()))
                        .toList();
    }

    /** Findings against the scene's true labels. */
    public EventFilm events() {
        PlayedScene scene = film.scene();
        FilmLabels labels = SceneLabeller.label(scene, film.seed());
        return new EventFilm(
                film.name(),
                scene.durationSeconds() / SECONDS_PER_HOUR,
                labels.events().stream().map(EventMark::of).toList(),
                EventMark.of(measured.findings()),
                labels.unclear(),
                table().map(t ->
                        (Identities) new TrackIdentities(ClearMatching.usual().match(t))));
    }

    private static Optional<FilmTracks> tracks(FilmMeasurement measured) {
        return measured.tracked().map(t -> t.tracks());
    }
}
