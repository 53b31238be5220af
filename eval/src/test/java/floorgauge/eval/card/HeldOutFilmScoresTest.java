package floorgauge.eval.card;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.BallObservation;
import floorgauge.court.track.Body;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import floorgauge.eval.ball.BallTruth;
import floorgauge.eval.film.FilmMeasurement;
import floorgauge.eval.film.FilmScores;
import floorgauge.eval.film.HeldOutFilm;
import floorgauge.eval.film.RenderedTruth;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.eval.tracking.MotChallengeRow;
import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.camera.CameraStyle;
import floorgauge.vision.tracking.TeamKits;
import floorgauge.vision.tracking.TrackedFilm;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.assertj.core.data.Offset;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** A film that was never drawn: its camera and scene are known, the measurement is made up. */
class HeldOutFilmScoresTest {

    private static final HeldOutFilm FILM = new HeldOutFilm("pin-down-sound", CameraStyle.TRIPOD_HIGH, 7);
    private static final ImageBox BOX = new ImageBox(100, 100, 40, 100);
    private static final FloorPoint FOOT = new FloorPoint(5, 2);

    @Test
    void withoutACourtNothingIsDefined() {
        CourtCalibration none = CourtCalibration.none(FILM.scene().rules(), 1280, 720, "nothing there");
        FilmScores scores = new FilmScores(FILM, truth(), new FilmMeasurement(none, Optional.empty(), List.of()));
        assertThat(scores.courtStatus()).isEqualTo(CalibrationStatus.NONE);
        assertThat(scores.court().coverage()).isZero();
        assertThat(scores.tracks()).isEmpty();
        assertThat(scores.feet().count()).isZero();
        assertThat(scores.ankles().count()).isZero();
        assertThat(scores.poses().averagePrecision()).isNaN();
        assertThat(scores.correctKeypoints()).isNaN();
        assertThat(scores.ball()).isEmpty();
        assertThat(scores.events().results()).isEmpty();
        assertThat(scores.events().labels()).isNotEmpty();
    }

    /** What a camera in the other half would see: the same court, so feet and ball are right after the turn. */
    @Test
    void aCourtFoundTurnedByHalfIsTheSameCourt() {
        FilmScores scores = new FilmScores(FILM, truth(), new FilmMeasurement(turnedCourt(), tracked(), List.of()));
        // The lens bends lines a little, which the made-up court does not know.
        assertThat(scores.court().everywhere().medianMetres()).isLessThan(0.5);
        assertThat(scores.court().visibleIou()).isGreaterThan(0.9);
        assertThat(scores.feet().count()).isEqualTo(2);
        assertThat(scores.feet().medianMetres()).isCloseTo(0, Offset.offset(1e-9));
        assertThat(scores.ankles().count()).isEqualTo(1);
        assertThat(scores.ankles().medianMetres()).isCloseTo(0.3, Offset.offset(1e-9));
        assertThat(scores.tracks().orElseThrow().hota().hota()).isCloseTo(1, Offset.offset(1e-9));
        assertThat(scores.ball().orElseThrow().found()).isEqualTo(1);
        assertThat(scores.ball().orElseThrow().missed()).isZero();
        assertThat(scores.ball().orElseThrow().space().medianAbsolute()).isCloseTo(0, Offset.offset(1e-9));
    }

    /** A film that was measured, one without a court and one that broke stand side by side in every table. */
    @Test
    void theCardTellsEveryStageAndWhatBroke() {
        CourtCalibration none = CourtCalibration.none(FILM.scene().rules(), 1280, 720, "nothing there");
        CardText text = new CardText();
        FilmSection.write(
                List.of(
                        new FilmScores(FILM, truth(), new FilmMeasurement(turnedCourt(), tracked(), List.of())),
                        new FilmScores(FILM, truth(), new FilmMeasurement(none, Optional.empty(), List.of()))),
                List.of("another film (its index is damaged)"),
                text);
        String card = text.toString();
        assertThat(card)
                .contains("## Court on rendered film")
                .contains("| pin-down-sound-tripod-high-7 | none | - | - | 0.00 |")
                .contains(
                        "| pin-down-sound-tripod-high-7 | 1.000 | 1.000 | 1.000 | 1.000 | 1.000 | 1.000 | 0 | 0.00 | 0.00 |")
                .contains("| pin-down-sound-tripod-high-7 | - | - | - | - | - | - | - | - | - |")
                .contains("| pin-down-sound-tripod-high-7 | 1.000 | 1.000 | 1.000 | 4.0 | 0.00 |")
                .contains("## Events and flags on rendered film")
                .contains("Not measured, because the measurement breaks: another film (its index is damaged).");
    }

    private static RenderedTruth truth() {
        List<MotChallengeRow> rows = new ArrayList<>();
        for (int frame = 0; frame < 2; frame++) {
            rows.add(new MotChallengeRow(frame, 1, Optional.of(BOX), 1, Optional.of(FOOT)));
        }
        return new RenderedTruth(
                new MotChallengeFile(rows),
                new TreeMap<>(),
                List.of(
                        new BallTruth(
                                0,
                                Optional.of(new PixelPoint(300, 200)),
                                Optional.of(new BallTruth.Place(new FloorPoint(3, 1), 2))),
                        new BallTruth(1 / HeldOutFilm.FRAMES_PER_SECOND, Optional.empty(), Optional.empty())),
                ankles());
    }

    /** In the first frame the left foot stands, a foot's length behind where it will be seen, and the right is in the air. */
    private static TreeMap<Long, Map<Integer, RenderedTruth.Ankles>> ankles() {
        FloorPoint left = new FloorPoint(FOOT.xMetres() - 0.3, FOOT.yMetres());
        TreeMap<Long, Map<Integer, RenderedTruth.Ankles>> frames = new TreeMap<>();
        frames.put(0L, Map.of(1, new RenderedTruth.Ankles(Optional.of(left), Optional.empty())));
        return frames;
    }

    private static CourtCalibration turnedCourt() {
        Camera camera = FILM.plan().path().at(0);
        double[] h = camera.homographyFloorToPixel();
        double[][] turned = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                turned[i][j] = (j < 2 ? -1 : 1) * h[3 * i + j];
            }
        }
        RealMatrix back = new LUDecomposition(new Array2DRowRealMatrix(turned))
                .getSolver()
                .getInverse();
        double[] pixelToFloor = new double[9];
        for (int i = 0; i < 9; i++) {
            pixelToFloor[i] = back.getEntry(i / 3, i % 3);
        }
        return CourtCalibration.known(
                FILM.scene().rules(),
                pixelToFloor,
                camera.lens().width(),
                camera.lens().height());
    }

    private static Optional<TrackedFilm> tracked() {
        TreeMap<Long, Double> times = new TreeMap<>();
        List<PlayerObservation> seen = new ArrayList<>();
        for (long frame = 0; frame < 2; frame++) {
            times.put(frame, frame / HeldOutFilm.FRAMES_PER_SECOND);
            seen.add(new PlayerObservation(
                    frame,
                    frame / HeldOutFilm.FRAMES_PER_SECOND,
                    exact(FOOT.turnedHalf()),
                    FootSource.BOX_BOTTOM,
                    Optional.of(BOX),
                    Optional.empty(),
                    new Body(
                            Optional.of(exact(FOOT.turnedHalf())),
                            Optional.of(exact(FOOT.turnedHalf())),
                            Optional.empty(),
                            OptionalDouble.empty(),
                            OptionalDouble.empty()),
                    1));
        }
        PlayerTrack track = new PlayerTrack(5, Team.FIRST, 1, seen, List.of());
        BallObservation ball = new BallObservation(
                0,
                0,
                exact(new FloorPoint(-3, -1)),
                OptionalDouble.of(2),
                Optional.of(new PixelPoint(300, 204)),
                OptionalInt.empty(),
                1);
        FilmTracks tracks = new FilmTracks(times, List.of(track), Optional.of(List.of(ball)));
        return Optional.of(new TrackedFilm(tracks, new TeamKits(OptionalInt.empty(), OptionalInt.empty()), true));
    }

    private static FloorEstimate exact(FloorPoint at) {
        return new FloorEstimate(at, FloorCovariance.isotropic(0.1));
    }
}
