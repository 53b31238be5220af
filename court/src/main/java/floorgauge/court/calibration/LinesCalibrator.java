package floorgauge.court.calibration;

import floorgauge.court.lines.BackgroundPicture;
import floorgauge.court.lines.EvidenceMap;
import floorgauge.court.lines.LineSegment;
import floorgauge.court.lines.PaintColour;
import floorgauge.court.lines.PaintStrength;
import floorgauge.court.lines.RidgeFinder;
import floorgauge.court.lines.RidgeIndex;
import floorgauge.court.lines.RidgePoint;
import floorgauge.court.lines.SegmentFinder;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.opencv.core.Mat;

/**
 * Finds a court from its painted lines, without a click: background over the frames, ridge points, their colours, vanishing
 * points, hypotheses, the court that explains the paint best, and a robust fit of all of its lines to the paint.
 */
final class LinesCalibrator {

    /** Wider pictures are made smaller first: finer detail than this carries no more of a 5 cm line. */
    private static final int WORKING_WIDTH = 1280;

    /** Shares of the split between paint and grain from which points are looked at, one after the other. */
    private static final double[] STRENGTH_SHARES = {0.75, 0.4};

    /** Pairs of directions tried on each paint at first, and kept for a thorough look. */
    private static final int PAIRS = 3;

    private static final int PAIRS_KEPT = 8;

    /** Directions tried on each paint in a thorough look. */
    private static final int MOST_OTHERS = 9;

    private static final int HYPOTHESES_KEPT = 8;
    private static final int REFINED = 12;

    /** Lines are looked at in pieces of about this length. */
    private static final double PIECE_METRES = 0.25;

    /** Steps of each fit of lines to paint before the paint is looked for again. */
    private static final int STEPS = 6;

    /** A good court that explains this share of its lines is not looked for in single colours. */
    private static final double DECISIVE_SHARE = 0.75;

    /** Reach of the search across a line, as shares of the picture's width, from far to near. */
    private static final double[] REACHES = {0.012, 0.008, 0.005, 0.0035, 0.0035};

    private final List<RuleSet> candidates;
    private final int filmWidth;
    private final int filmHeight;
    private final int width;
    private final int height;
    private final boolean thorough;

    /** All ridge points in company: a found court is fitted to faint paint too, near where it must be. */
    private RidgeIndex everything;

    /** What of them is strong enough to be paint for sure, or nearly. */
    private List<RidgePoint> surePaint = List.of();

    private LinesCalibrator(List<RuleSet> candidates, Mat film, Mat background, boolean thorough) {
        this.thorough = thorough;
        this.everything = new RidgeIndex(List.of(), background.cols(), background.rows());
        this.candidates = candidates;
        this.filmWidth = film.cols();
        this.filmHeight = film.rows();
        this.width = background.cols();
        this.height = background.rows();
    }

    /** One set of paint: all of it, or that of one colour. Segments are as they are in the film. */
    private record Paint(
            RidgeIndex ridges,
            List<LineSegment> segments,
            EvidenceMap evidence,
            EvidenceMap fine,
            List<Directions> directions) {}

    /** Two directions of the floor, in the ideal picture behind a lens. */
    private record Directions(VanishingPair pair, Lens lens) {

        boolean same(Directions other) {
            return lens.equals(other.lens) && pair.near(other.pair);
        }
    }

    /** The most likely first; what is no court comes after all that are. */
    private static final Comparator<Refined> BEST_FIRST =
            Comparator.comparing((Refined r) -> !r.standing().court()).thenComparingDouble(r -> -r.score());

    /** A refined hypothesis in working pixels. */
    private record Refined(RuleSet rules, FloorProjection projection, double score, LinesVerdict.Standing standing) {}

    static LinesFit fit(List<RuleSet> candidates, List<Mat> frames) {
        return fit(candidates, frames, true);
    }

    /** A look that takes no longer than a court plain to see needs: for pictures that are soon followed by others. */
    static LinesFit glance(List<RuleSet> candidates, Mat frame) {
        return fit(candidates, List.of(frame), false);
    }

    private static LinesFit fit(List<RuleSet> candidates, List<Mat> frames, boolean thorough) {
        OpenCv.load();
        Mat background = BackgroundPicture.median(frames, WORKING_WIDTH);
        try {
            return new LinesCalibrator(candidates, frames.get(0), background, thorough).fit(background);
        } finally {
            background.release();
        }
    }

    /** The court that these frames show near a known one: nothing else is looked for. */
    static LinesFit near(CourtCalibration known, List<Mat> frames) {
        OpenCv.load();
        Mat background = BackgroundPicture.median(frames, WORKING_WIDTH);
        try {
            return new LinesCalibrator(List.of(known.rules()), frames.get(0), background, false)
                    .near(known, background);
        } finally {
            background.release();
        }
    }

    private LinesFit near(CourtCalibration known, Mat background) {
        List<RidgePoint> points = inCompany(background);
        FloorProjection start =
                known.projection().orElseThrow().forPictureScaledBy((double) width / known.widthPixels());
        CourtSamples samples = samples(known.rules());
        double score = new CourtScore(samples, new EvidenceMap(points, width, height, width / 640.0))
                .of(start.floorToIdeal(), start.lens());
        return new LinesVerdict(
                        known.rules(),
                        samples,
                        new RidgeIndex(points, width, height),
                        filmWidth,
                        filmHeight,
                        width,
                        height)
                .of(start, LinesVerdict.Scores.alone(score));
    }

    private List<RidgePoint> inCompany(Mat background) {
        return SegmentFinder.inCompany(RidgeFinder.find(background), width, height, Math.max(4, width / 160));
    }

    private LinesFit fit(Mat background) {
        List<RidgePoint> points = inCompany(background);
        everything = new RidgeIndex(points, width, height);
        List<Refined> refined = new ArrayList<>();
        List<Paint> looked = new ArrayList<>();
        for (Supplier<Paint> supplier : paints(points)) {
            Paint paint = supplier.get();
            looked.add(paint);
            for (Directions own : first(paint.directions())) {
                refined.addAll(refinedOf(paint, own));
                Optional<LinesFit> decisive = decisive(refined);
                if (decisive.isPresent()) {
                    return decisive.get();
                }
            }
        }
        if (thorough && !good(refined)) {
            for (Paint paint : looked) {
                for (Directions other : others(paint, looked)) {
                    refined.addAll(refinedOf(paint, other));
                }
                Optional<LinesFit> decisive = decisive(refined);
                if (decisive.isPresent()) {
                    return decisive.get();
                }
            }
        }
        boolean directions =
                looked.stream().anyMatch(paint -> !paint.directions().isEmpty());
        if (!directions) {
            return none("No two directions of straight lines were found on a floor.");
        }
        if (refined.isEmpty()) {
            return none("The lines that were found do not fit a basketball court.");
        }
        refined = byAllPaint(refined, looked.get(looked.size() - 1));
        refined.sort(BEST_FIRST);
        return conclude(refined);
    }

    /**
     * Courts that were found in strong paint, scored by faint paint too, and the best of them fitted to it: far lines seen
     * from low down are faint, and a court in its place has them, while one laid over others' lines has none.
     *
     * @param all paint
     */
    private List<Refined> byAllPaint(List<Refined> refined, Paint all) {
        Map<RuleSet, CourtScore> scores = new HashMap<>();
        candidates.forEach(rules -> scores.put(rules, new CourtScore(samples(rules), all.fine())));
        List<Refined> judged = new ArrayList<>(refined.parallelStream()
                .map(r -> judged(r.rules(), r.projection(), scores))
                .toList());
        judged.sort(BEST_FIRST);
        judged.addAll(judged.subList(0, Math.min(REFINED, judged.size())).parallelStream()
                .flatMap(r -> refine(r.projection(), samples(r.rules()), all.ridges())
                        .map(ProjectionRefiner.Fit::projection)
                        .filter(CourtHypotheses::isCamera)
                        .map(fit -> judged(r.rules(), fit, scores))
                        .stream())
                .toList());
        judged.addAll(refined);
        return judged;
    }

    private Refined judged(RuleSet rules, FloorProjection fit, Map<RuleSet, CourtScore> scores) {
        double score = scores.get(rules).of(fit.floorToIdeal(), fit.lens());
        return new Refined(rules, fit, score, standing(rules, samples(rules), fit, score));
    }

    private static CourtSamples samples(RuleSet rules) {
        return CourtSamples.of(rules, PIECE_METRES);
    }

    /** Whether the best court so far is good, if not beyond doubt. */
    private boolean good(List<Refined> refined) {
        refined.sort(BEST_FIRST);
        return !refined.isEmpty() && conclude(refined).calibration().status() == CalibrationStatus.GOOD;
    }

    private static List<Directions> first(List<Directions> directions) {
        return directions.subList(0, Math.min(PAIRS, directions.size()));
    }

    /**
     * Directions that were not tried on this paint: its own that were less supported, and those of other paint, because all
     * courts on one floor share theirs.
     */
    private static List<Directions> others(Paint paint, List<Paint> all) {
        List<Directions> tried = new ArrayList<>(first(paint.directions()));
        int before = tried.size();
        for (int rank = 0; rank < PAIRS_KEPT && tried.size() < before + MOST_OTHERS; rank++) {
            for (Paint other : all) {
                if (rank < other.directions().size()) {
                    Directions candidate = other.directions().get(rank);
                    if (tried.stream().noneMatch(candidate::same)) {
                        tried.add(candidate);
                    }
                }
            }
        }
        return tried.subList(before, tried.size());
    }

    /** The best court, where it is good and explains so much that nothing else needs to be looked at. */
    private Optional<LinesFit> decisive(List<Refined> refined) {
        if (refined.isEmpty()) {
            return Optional.empty();
        }
        refined.sort(BEST_FIRST);
        return Optional.of(conclude(refined))
                .filter(fit -> fit.calibration().status() == CalibrationStatus.GOOD)
                .filter(fit -> fit.matchedShare() >= DECISIVE_SHARE);
    }

    private LinesFit none(String reason) {
        return LinesFit.none(CourtCalibration.none(candidates.get(0), filmWidth, filmHeight, reason));
    }

    /** Whatever is strong first, then weaker paint too, then each of its colours, then everything. */
    private List<Supplier<Paint>> paints(List<RidgePoint> points) {
        List<Supplier<Paint>> paints = new ArrayList<>();
        List<RidgePoint> paint = points;
        for (double share : STRENGTH_SHARES) {
            List<RidgePoint> strong = PaintStrength.paintOf(points, share);
            paints.add(() -> paint(strong));
            paint = strong;
        }
        surePaint = paint;
        List<PaintColour> colours = PaintColour.among(paint);
        if (colours.size() > 1) {
            for (PaintColour colour : colours) {
                List<RidgePoint> own = paint.stream().filter(colour::holds).toList();
                paints.add(() -> paint(own));
            }
        }
        paints.add(() -> paint(points));
        return paints;
    }

    private Paint paint(List<RidgePoint> points) {
        List<LineSegment> segments = SegmentFinder.find(points, width, height, width / 80.0);
        Lens lens = LensGuess.of(segments, width, height);
        List<Directions> directions =
                VanishingPair.find(LensGuess.straightened(segments, lens), width, height, PAIRS_KEPT).stream()
                        .map(pair -> new Directions(pair, lens))
                        .toList();
        EvidenceMap evidence = new EvidenceMap(points, width, height, width / 320.0);
        return new Paint(
                new RidgeIndex(points, width, height),
                segments,
                evidence,
                evidence.withTolerance(width / 640.0),
                directions);
    }

    private List<Refined> refinedOf(Paint paint, Directions directions) {
        Lens lens = directions.lens();
        List<LineSegment> straight = LensGuess.straightened(paint.segments(), lens);
        List<CourtHypotheses.Scored> scored = new ArrayList<>();
        for (RuleSet rules : candidates) {
            scored.addAll(new CourtHypotheses(rules, paint.evidence(), lens)
                    .of(directions.pair(), straight, HYPOTHESES_KEPT));
        }
        scored.sort(Comparator.comparingDouble((CourtHypotheses.Scored s) -> -s.score()));
        if (scored.isEmpty()) {
            return List.of();
        }
        return scored.subList(0, Math.min(REFINED, scored.size())).parallelStream()
                .flatMap(s -> refined(s, lens, paint).stream())
                .toList();
    }

    private Optional<Refined> refined(CourtHypotheses.Scored hypothesis, Lens lens, Paint paint) {
        CourtSamples samples = samples(hypothesis.rules());
        FloorProjection start = new FloorProjection(hypothesis.floorToPicture(), lens);
        return refine(start, samples, paint.ridges())
                .map(ProjectionRefiner.Fit::projection)
                .filter(CourtHypotheses::isCamera)
                .map(fit -> {
                    double score = new CourtScore(samples, paint.fine()).of(fit.floorToIdeal(), fit.lens());
                    return new Refined(
                            hypothesis.rules(), fit, score, standing(hypothesis.rules(), samples, fit, score));
                });
    }

    private LinesVerdict.Standing standing(RuleSet rules, CourtSamples samples, FloorProjection fit, double score) {
        LinesVerdict verdict = verdict(rules, samples);
        LinesVerdict.Standing atBest = verdict.standing(fit, score, 1);
        // Most are no court anyhow.
        return atBest.court() ? verdict.standing(fit, score, explained(rules, samples, fit)) : atBest;
    }

    private double explained(RuleSet rules, CourtSamples samples, FloorProjection fit) {
        return OwnColour.explainedShare(rules, samples, fit, surePaint, width, height, LinesVerdict.REACH * width);
    }

    /** Fits lines to paint, looking less far each time. */
    private Optional<ProjectionRefiner.Fit> refine(FloorProjection start, CourtSamples samples, RidgeIndex ridges) {
        Optional<ProjectionRefiner.Fit> fit = Optional.empty();
        FloorProjection current = start;
        for (int i = 0; i < REACHES.length; i++) {
            double reach = REACHES[i] * width;
            LineObservations observations =
                    LineObservations.find(samples, ridges, current, width, height, reach, reach / 4);
            fit = ProjectionRefiner.refine(current, observations, i > 0 ? 1 : 0, STEPS);
            if (fit.isEmpty()) {
                return Optional.empty();
            }
            current = fit.get().projection();
        }
        return fit;
    }

    private LinesFit conclude(List<Refined> refined) {
        Refined best = refined.get(0);
        double elsewhere = most(refined, r -> r.standing().ownPaint() && sameRules(best, r) && differs(best, r));
        double otherRules = most(refined, r -> r.standing().ownPaint() && !sameRules(best, r));
        double motley = most(refined, r -> !r.standing().ownPaint() && (!sameRules(best, r) || differs(best, r)));
        CourtSamples samples = samples(best.rules());
        FloorProjection projection = best.rules().isSymmetric() ? nearSideFirst(best.projection()) : best.projection();
        double explained = explained(best.rules(), samples, projection);
        return verdict(best.rules(), samples)
                .of(projection, new LinesVerdict.Scores(best.score(), elsewhere, otherRules, motley, explained));
    }

    private static double most(List<Refined> refined, Predicate<Refined> which) {
        return refined.stream().filter(which).mapToDouble(Refined::score).max().orElse(0);
    }

    private static boolean sameRules(Refined a, Refined b) {
        return a.rules().equals(b.rules());
    }

    private LinesVerdict verdict(RuleSet rules, CourtSamples samples) {
        return new LinesVerdict(rules, samples, everything, filmWidth, filmHeight, width, height);
    }

    /** Whether two courts put the floor in sight in different places, apart from a turn by 180 degrees. */
    private boolean differs(Refined a, Refined b) {
        List<Double> straight = new ArrayList<>();
        List<Double> turned = new ArrayList<>();
        Homography toFloorA = a.projection().floorToIdeal().inverse();
        Homography toFloorB = b.projection().floorToIdeal().inverse();
        for (int row = 3; row <= 9; row++) {
            for (int column = 1; column <= 9; column += 2) {
                double px = width * column / 10.0;
                double py = height * row / 10.0;
                double xa = toFloorA.mapX(px, py);
                double ya = toFloorA.mapY(px, py);
                if (Math.abs(xa) < a.rules().lengthMetres() / 2
                        && Math.abs(ya) < a.rules().widthMetres() / 2) {
                    double xb = toFloorB.mapX(px, py);
                    double yb = toFloorB.mapY(px, py);
                    straight.add(Math.hypot(xa - xb, ya - yb));
                    turned.add(Math.hypot(xa + xb, ya + yb));
                }
            }
        }
        return median(straight) > 0.3 && median(turned) > 0.3;
    }

    private static double median(List<Double> values) {
        return values.isEmpty()
                ? 0
                : values.stream().sorted().skip(values.size() / 2).findFirst().orElseThrow();
    }

    /** A court looks the same turned by 180 degrees: the camera's side is called near, which is y below 0. */
    private static FloorProjection nearSideFirst(FloorProjection projection) {
        boolean turn = PinholeCamera.of(projection)
                .map(camera -> camera.position().y() > 0)
                .orElse(false);
        if (!turn) {
            return projection;
        }
        Homography half = Homography.of(-1, 0, 0, 0, -1, 0, 0, 0, 1);
        return new FloorProjection(projection.floorToIdeal().after(half), projection.lens());
    }
}
