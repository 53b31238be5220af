package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.lines.StripeProfiles;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Follows the court through a film whose camera pans, tilts and zooms, is knocked, or is cut to another. The court is
 * found without a click in one picture; from there each picture's camera motion, told by the hall's corners, says where the
 * lines must be now, and the lines that are there pull the court onto themselves, so that drift cannot build up. Where too
 * few lines are found the motion alone carries the court for a moment, with a growing error, then it is called lost and
 * looked for anew.
 *
 * <p>Pictures are given in order of time. Not safe for use by several threads. Close it.
 */
public final class CourtFollower implements AutoCloseable {

    private static final int WORKING_WIDTH = 1280;

    /** The motion alone carries a court that was good for this long. */
    private static final double CARRIED_SECONDS = 1.5;

    /** Error of the motion between two pictures, as a share of the picture's width. */
    private static final double MOTION_ERROR = 0.0005;

    /** Error of a court where the motion is not known: the camera was knocked, or somebody walked past. */
    private static final double UNKNOWN_MOTION_ERROR = 0.004;

    /** A lost court is looked for after this, then after twice as long each time. */
    private static final double FIRST_RETRY_SECONDS = 0.4;

    private static final double LONGEST_RETRY_SECONDS = 8;

    /** The paint's contrast is learned anew so often: light differs over a floor. */
    private static final double LEARNING_SECONDS = 1;

    private List<RuleSet> rules;
    private final FrameMotion motion = new FrameMotion();
    private final CalibrationLog found = new CalibrationLog();
    private Optional<Track> track = Optional.empty();
    private double retryAt = Double.NEGATIVE_INFINITY;
    private double retryAfter = FIRST_RETRY_SECONDS;
    private String lost = "";

    /** The court as it is followed, in working pixels. */
    private static final class Track {
        private final RuleSet rules;
        private final CourtSamples samples;
        private final LinesVerdict.Scores scores;
        private FloorProjection projection;
        private double sigmaPixels;
        private StripeProfiles.Contrast contrast;
        private CourtCalibration anchored;
        private double anchoredAt;
        private double learnedAt;

        Track(
                CourtCalibration calibration,
                FloorProjection projection,
                LinesVerdict.Scores scores,
                double sigmaPixels,
                StripeProfiles.Contrast contrast,
                double timeSeconds) {
            this.rules = calibration.rules();
            this.samples = CourtSamples.of(rules, 0.35);
            this.scores = scores;
            this.projection = projection;
            this.sigmaPixels = sigmaPixels;
            this.contrast = contrast;
            this.anchored = calibration;
            this.anchoredAt = timeSeconds;
            this.learnedAt = timeSeconds;
        }
    }

    /** @param rules of the court; empty to find the rule book whose lines fit best, which then holds for the whole film */
    public CourtFollower(Optional<RuleSet> rules) {
        OpenCv.load();
        this.rules = rules.map(List::of).orElseGet(RuleSet::all);
    }

    /**
     * Looks at the next picture.
     *
     * @param bgr 8 bits, BGR, the film's size; left unchanged
     * @param timeSeconds presentation time, above that of the picture before
     * @return where the court is in it; status NONE where it is lost, with the reason
     */
    public CourtCalibration next(Mat bgr, double timeSeconds) {
        if (found.size() > 0 && !(timeSeconds > found.timeSeconds(found.size() - 1))) {
            throw new IllegalArgumentException("pictures come in order of time: " + timeSeconds + " s after "
                    + found.timeSeconds(found.size() - 1));
        }
        double scale = Math.min(1, (double) WORKING_WIDTH / bgr.cols());
        Mat small = new Mat();
        try {
            if (scale < 1) {
                Imgproc.resize(bgr, small, new Size(), scale, scale, Imgproc.INTER_AREA);
            }
            Mat working = scale < 1 ? small : bgr;
            CourtCalibration result = look(working, bgr, timeSeconds);
            found.add(timeSeconds, result);
            return result;
        } finally {
            small.release();
        }
    }

    /** What was found so far; at least one picture must have been looked at. */
    public CourtOverTime courts() {
        return CourtOverTime.moving(found);
    }

    private CourtCalibration look(Mat working, Mat bgr, double timeSeconds) {
        Lens lens = track.map(t -> t.projection.lens()).orElse(Lens.centred(working.cols(), working.rows(), 0));
        // The motion and the lines' profiles do not need each other: two cores take one each.
        Optional<CompletableFuture<StripeProfiles>> profiles =
                track.map(t -> CompletableFuture.supplyAsync(() -> new StripeProfiles(working, t.contrast)));
        Optional<FrameMotion.Motion> moved;
        try {
            moved = motion.next(working, lens);
        } finally {
            // Also where the motion fails: the picture must outlive who reads it.
            profiles.ifPresent(CompletableFuture::join);
        }
        Optional<StripeProfiles> paint = profiles.map(CompletableFuture::join);
        Optional<CourtCalibration> followed =
                track.flatMap(t -> follow(t, moved, paint.orElseThrow(), working, bgr, timeSeconds));
        if (followed.isPresent()) {
            return followed.get();
        }
        if (track.isPresent()) {
            lost = String.format(Locale.ROOT, "The court was lost at %.2f s.", timeSeconds);
            track = Optional.empty();
            retryAt = timeSeconds;
            retryAfter = FIRST_RETRY_SECONDS;
        } else if (moved.isEmpty()) {
            // A cut: what follows may well show the court.
            retryAt = Math.min(retryAt, timeSeconds);
            retryAfter = FIRST_RETRY_SECONDS;
        }
        return timeSeconds >= retryAt ? search(working, bgr, timeSeconds) : none(bgr, lost);
    }

    private CourtCalibration none(Mat bgr, String reason) {
        return CourtCalibration.none(rules.get(0), bgr.cols(), bgr.rows(), reason);
    }

    /** Looks for the court in a single picture. */
    private CourtCalibration search(Mat working, Mat bgr, double timeSeconds) {
        LinesFit fit = LinesCalibrator.glance(rules, bgr);
        CourtCalibration calibration = fit.calibration();
        if (calibration.status() != CalibrationStatus.GOOD) {
            retryAt = timeSeconds + retryAfter;
            retryAfter = Math.min(LONGEST_RETRY_SECONDS, 2 * retryAfter);
            lost = calibration.status() == CalibrationStatus.NONE
                    ? calibration.reason()
                    : "A court may be there, but not surely enough to follow it: " + calibration.reason();
            return none(bgr, lost);
        }
        rules = List.of(calibration.rules());
        double scale = (double) working.cols() / bgr.cols();
        FloorProjection projection = calibration.projection().orElseThrow().forPictureScaledBy(scale);
        Track begun = new Track(
                calibration,
                projection,
                LinesVerdict.Scores.alone(fit.score()),
                MOTION_ERROR * working.cols(),
                new StripeProfiles.Contrast(0, 0, 0),
                timeSeconds);
        learn(begun, working, timeSeconds);
        track = Optional.of(begun);
        retryAfter = FIRST_RETRY_SECONDS;
        return calibration;
    }

    private Optional<CourtCalibration> follow(
            Track t,
            Optional<FrameMotion.Motion> moved,
            StripeProfiles paint,
            Mat working,
            Mat bgr,
            double timeSeconds) {
        double step = (moved.isPresent() ? MOTION_ERROR : UNKNOWN_MOTION_ERROR) * working.cols();
        double sigma = Math.sqrt(t.sigmaPixels * t.sigmaPixels + step * step);
        FloorProjection predicted = moved.map(m ->
                        new FloorProjection(m.beforeToNow().after(t.projection.floorToIdeal()), t.projection.lens()))
                .orElse(t.projection);
        LinesFit fit = fit(t, predicted, sigma, paint, working, bgr);
        if (fit.calibration().status() != CalibrationStatus.NONE) {
            anchor(t, fit.calibration(), working, bgr, timeSeconds);
            return Optional.of(fit.calibration());
        }
        boolean sure = t.anchored.status() == CalibrationStatus.GOOD;
        if (moved.isEmpty() || !sure || timeSeconds - t.anchoredAt > CARRIED_SECONDS) {
            return Optional.empty();
        }
        t.projection = predicted;
        t.sigmaPixels = sigma;
        return Optional.of(carried(t, bgr, working, timeSeconds));
    }

    /**
     * The court's lines near where it is predicted. Where many are not there, a part of the court may have slipped off its
     * lines, farther than it is looked for: then it is looked for farther about, and counts where it is good there.
     */
    private static LinesFit fit(
            Track t, FloorProjection predicted, double sigma, StripeProfiles paint, Mat working, Mat bgr) {
        LinesVerdict verdict =
                new LinesVerdict(t.rules, t.samples, paint, bgr.cols(), bgr.rows(), working.cols(), working.rows());
        LinesFit near = verdict.of(new Prediction(predicted, sigma, working.cols(), working.rows()), t.scores);
        if (near.calibration().status() == CalibrationStatus.GOOD) {
            return near;
        }
        double free = UNKNOWN_MOTION_ERROR * working.cols();
        LinesFit about = verdict.ofSlipped(new Prediction(predicted, free, working.cols(), working.rows()), t.scores);
        return about.calibration().status() == CalibrationStatus.GOOD && about.matchedShare() > near.matchedShare()
                ? about
                : near;
    }

    private void anchor(Track t, CourtCalibration calibration, Mat working, Mat bgr, double timeSeconds) {
        double scale = (double) working.cols() / bgr.cols();
        t.projection = calibration.projection().orElseThrow().forPictureScaledBy(scale);
        t.anchored = calibration;
        t.anchoredAt = timeSeconds;
        t.sigmaPixels = 2 * MOTION_ERROR * working.cols();
        if (calibration.status() == CalibrationStatus.GOOD && timeSeconds - t.learnedAt >= LEARNING_SECONDS) {
            learn(t, working, timeSeconds);
        }
    }

    /** The court where the motion alone puts it: the last anchored covariance, and the motion's own. */
    private static CourtCalibration carried(Track t, Mat bgr, Mat working, double timeSeconds) {
        double scale = (double) bgr.cols() / working.cols();
        FloorProjection projection = t.projection.forPictureScaledBy(scale);
        CourtCalibration last = t.anchored;
        Optional<ProjectionCovariance> covariance =
                new Prediction(projection, t.sigmaPixels * scale, bgr.cols(), bgr.rows()).covariance();
        return new CourtCalibration(
                last.rules(),
                CalibrationStatus.WEAK,
                String.format(
                        Locale.ROOT,
                        "Too few lines were found; carried by the camera's motion for %.2f s.",
                        timeSeconds - t.anchoredAt),
                bgr.cols(),
                bgr.rows(),
                Optional.of(projection),
                covariance.orElse(last.covariance()),
                last.coverage());
    }

    /** How the paint differs from the floor beside it: the median over all lines in sight. */
    private static void learn(Track t, Mat working, double timeSeconds) {
        double[][] byFloor = new double[2][2];
        double[][] by = new double[2][FloorProjection.PARAMETERS];
        List<StripeProfiles.Contrast> contrasts = new ArrayList<>();
        for (int i = 0; i < t.samples.size(); i++) {
            Optional<PixelPoint> at = t.projection.toFilm(t.samples.x[i], t.samples.y[i]);
            if (at.isEmpty()
                    || !inside(at.get(), working)
                    || !t.projection.derivatives(t.samples.x[i], t.samples.y[i], byFloor, by)) {
                continue;
            }
            double dx = byFloor[0][0] * t.samples.directionX[i] + byFloor[0][1] * t.samples.directionY[i];
            double dy = byFloor[1][0] * t.samples.directionX[i] + byFloor[1][1] * t.samples.directionY[i];
            double length = Math.hypot(dx, dy);
            double area = Math.abs(byFloor[0][0] * byFloor[1][1] - byFloor[0][1] * byFloor[1][0]);
            double stripe = t.samples.lines.get(t.samples.line[i]).widthMetres() * area / length;
            contrasts.add(
                    StripeProfiles.contrastAt(working, at.get().x(), at.get().y(), -dy / length, dx / length, stripe));
        }
        t.contrast = median(contrasts);
        t.learnedAt = timeSeconds;
    }

    private static boolean inside(PixelPoint p, Mat picture) {
        return p.x() >= 0 && p.y() >= 0 && p.x() <= picture.cols() - 1 && p.y() <= picture.rows() - 1;
    }

    private static StripeProfiles.Contrast median(List<StripeProfiles.Contrast> of) {
        int middle = of.size() / 2;
        return new StripeProfiles.Contrast(
                of.stream().mapToDouble(StripeProfiles.Contrast::blue).sorted().toArray()[middle],
                of.stream().mapToDouble(StripeProfiles.Contrast::green).sorted().toArray()[middle],
                of.stream().mapToDouble(StripeProfiles.Contrast::red).sorted().toArray()[middle]);
    }

    @Override
    public void close() {
        motion.close();
    }
}
