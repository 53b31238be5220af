package floorgauge.court.calibration;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.lines.PaintSearch;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The last fit of a found court: residual and covariance, what of the court was seen, and from these the status with its
 * reason in words.
 */
final class LinesVerdict {

    /** A rival with more than this share of the best score is as good as the best. */
    private static final double NEARLY_AS_WELL = 0.8;

    /**
     * Log likelihood ratios, and what is left over.
     *
     * @param best of the court that was chosen
     * @param elsewhere of the best court of the same rules that lies elsewhere; 0 where there is none
     * @param otherRules of the best court of other rules; 0 where there is none
     * @param motley of the best that lies elsewhere and is no court, since its paint has several colours; 0 where there is
     *     none
     * @param explained share of the paint on the court's floor, of the court's colour, that its lines explain
     */
    record Scores(double best, double elsewhere, double otherRules, double motley, double explained) {

        /** Of a court that has no rival, and whose place is not in question. */
        static Scores alone(double best) {
            return new Scores(best, 0, 0, 0, 1);
        }
    }

    /** Reach across a line in the last fit, as a share of the picture's width. */
    static final double REACH = 0.0035;

    /** The same in the fits of a court that stands still. */
    private static final double[] REACHES_STILL = {REACH, REACH, REACH, REACH};

    /** The same in those of a court that is followed: the camera's motion between two pictures is known so well. */
    private static final double[] REACHES_FOLLOWED = {0.008, REACH};

    /** The same where a followed court has slipped off its lines. */
    private static final double[] REACHES_SLIPPED = {0.025, 0.015, 0.008, REACH};

    /** Fits with places of the lines' own: each finds their noise anew. */
    private static final int OWN_ROUNDS = 3;

    /** Steps of each fit before the paint is looked for again. */
    private static final int STEPS = 20;

    /**
     * Residuals from which each line's own place was taken understate how alike neighbours err, by this factor of the
     * variance (fitted on 30 rendered views of seeds below 9000, so that squared errors over covariance average 2).
     */
    private static final double TAKEN_UP = 2;

    /** A line of which this share carries paint counts as seen. */
    private static final double SEEN = 0.5;

    /** Beyond the paint the floor is carried this far. */
    private static final double MARGIN_METRES = 1.5;

    /** Least log likelihood ratio: the search tries some million courts, whose logarithm is 14; twice that to be safe. */
    private static final double LEAST_SCORE = 28;

    /**
     * Straight lines of other sports are parallel to the court's and many; arcs are the court's own. A good court has this
     * share of those in sight.
     */
    private static final double ARCS_SEEN = 0.4;

    /** So much of what is in sight must carry paint of any colour, or, where the court is followed, paint of its colour. */
    private static final double LEAST_SHARE = 0.45;

    /** So much of what is in sight must carry paint of one colour, however worn it is. */
    private static final double LEAST_OWN_SHARE = 0.40;

    /** So much of it where the floor has other lines of that colour. */
    private static final double LEAST_OWN_SHARE_AMONG_OTHERS = 0.50;

    /**
     * A good court is nearly all there in one colour of paint, or nearly all paint of that colour on its floor is its own.
     * Lines of other sports taken for a court's are neither. On 18 development views of shared floors the 16 courts in their
     * place explain 0.98 and more of their colour; 20 laid over other sports' lines explain 0.78 and less, but for one of
     * 0.92 that is far outdone by the true one, and have 0.69 and less of what is in sight in one colour. So a floor all of
     * whose sports are painted white has good courts, and so has a worn one.
     */
    private static final double GOOD_OWN_SHARE = 0.75;

    private static final double GOOD_EXPLAINED_SHARE = 0.9;

    /** A good court has paint, of any colour, at this share of what is in sight. */
    private static final double GOOD_SHARE = 0.6;

    private static final double GOOD_ERROR_METRES = 0.10;

    private final RuleSet rules;
    private final CourtSamples samples;
    private final PaintSearch paint;
    private final int filmWidth;
    private final int filmHeight;
    private final int width;
    private final int height;

    LinesVerdict(
            RuleSet rules,
            CourtSamples samples,
            PaintSearch paint,
            int filmWidth,
            int filmHeight,
            int width,
            int height) {
        this.rules = rules;
        this.samples = samples;
        this.paint = paint;
        this.filmWidth = filmWidth;
        this.filmHeight = filmHeight;
        this.width = width;
        this.height = height;
    }

    /**
     * What a hypothesis is worth beside others.
     *
     * @param court whether it is a court at all, if not which: lines enough that are told apart, arcs among them
     * @param ownPaint whether they are of one colour of paint: what several sports have painted is no court, however much
     *     of it there is, and no more than a reason to doubt one
     */
    record Standing(boolean court, boolean ownPaint) {}

    /**
     * @param score log likelihood ratio of the court that lies about there
     * @param explained share of the paint on its floor, of its colour, that its lines explain
     */
    Standing standing(FloorProjection near, double score, double explained) {
        double reach = REACH * width;
        LineObservations all = find(near, REACH, reach / 4, Optional.empty());
        LineObservations apart = all.toldApart(near, width, height, reach);
        Evidence evidence = new Evidence(all, apart, new Scores(score, 0, 0, 0, explained), Double.NaN, false);
        return new Standing(evidence.isACourt(), !evidence.motley());
    }

    /** The share of the lines in sight that carries paint. */
    private static double share(LineObservations evidence) {
        double visible = Arrays.stream(evidence.visibleWeight()).sum();
        double found = evidence.matches().stream()
                .mapToDouble(LineObservations.Match::weight)
                .sum();
        return visible > 0 ? found / visible : 0;
    }

    private double oneColourShare(LineObservations evidence) {
        double visible = Arrays.stream(evidence.visibleWeight()).sum();
        return visible > 0 ? paint.weightOfOneColour(evidence.places()) / visible : 0;
    }

    /** A court found in one picture, or in the background of many. */
    LinesFit of(FloorProjection start, Scores scores) {
        return of(start, Optional.empty(), REACHES_STILL, scores);
    }

    /** A court followed from the picture before. */
    LinesFit of(Prediction prediction, Scores scores) {
        return of(prediction.projection(), Optional.of(prediction), REACHES_FOLLOWED, scores);
    }

    /** The same, looked for farther about: where a part of the court has slipped off its lines. */
    LinesFit ofSlipped(Prediction prediction, Scores scores) {
        return of(prediction.projection(), Optional.of(prediction), REACHES_SLIPPED, scores);
    }

    private LinesFit of(FloorProjection start, Optional<Prediction> prediction, double[] reaches, Scores scores) {
        FloorProjection projection = start;
        double sigma = reaches[0] * width / 4;
        double asOne = 1;
        Optional<ProjectionRefiner.Fit> fit = Optional.empty();
        LineObservations observations = find(projection, reaches[0], sigma, prediction);
        for (int round = 1; round <= reaches.length; round++) {
            LineObservations lines = observations;
            fit = ProjectionRefiner.refine(
                    projection,
                    prediction
                            .map(p -> (ProjectionRefiner.Observations) (tried, basis, into) -> {
                                lines.residuals(tried, basis, into);
                                p.residuals(tried, basis, into);
                            })
                            .orElse(lines),
                    1,
                    STEPS);
            if (fit.isEmpty()) {
                return LinesFit.none(none("The painted lines that were found leave the camera's place open."));
            }
            projection = fit.get().projection();
            double[] left = observations.aboutLines(projection);
            sigma = scale(left);
            asOne = countAsOne(observations, left, sigma);
            observations = find(projection, reaches[Math.min(round, reaches.length - 1)], sigma, prediction);
        }
        ProjectionCovariance unit = fit.orElseThrow().unitCovariance();
        Placed placed =
                new Placed(projection, unit.scaled(asOne).withPulls(unit, observations.pullOfLines(projection)));
        if (prediction.isEmpty()) {
            // Whether it is a court at all was settled above, by lines that must lie where the book has them.
            placed = withOwnPlaces(projection, sigma, asOne).orElse(placed);
        }
        double filmScale = (double) filmWidth / width;
        CourtCalibration measured = new CourtCalibration(
                rules,
                CalibrationStatus.WEAK,
                "",
                filmWidth,
                filmHeight,
                Optional.of(placed.projection().forPictureScaledBy(filmScale)),
                inFilm(placed.covariance(), filmScale),
                Coverage.around(matched(observations), MARGIN_METRES));
        boolean followed = prediction.isPresent();
        // Of a court that is followed it was settled before which lines are its own.
        LineObservations apart =
                followed ? observations : observations.toldApart(projection, width, height, REACH * width);
        return judged(
                measured,
                observations,
                new Evidence(observations, apart, scores, medianError(measured), followed),
                scores,
                sigma * filmScale);
    }

    /** A court and how uncertain it is, working pixels. */
    private record Placed(FloorProjection projection, ProjectionCovariance covariance) {}

    /** The last fit of a court that stands still: each line has a place of its own, and the lens its second strength. */
    private Optional<Placed> withOwnPlaces(FloorProjection near, double spread, double together) {
        FloorProjection projection = near;
        double sigma = spread;
        double asOne = together;
        Optional<Placed> placed = Optional.empty();
        for (int round = 0; round < OWN_ROUNDS; round++) {
            LineObservations observations =
                    find(projection, REACH, sigma, Optional.empty()).withOwnPlaces(TAKEN_UP * asOne);
            Optional<ProjectionRefiner.Fit> fit = ProjectionRefiner.refine(projection, observations, 2, STEPS);
            if (fit.isEmpty()) {
                return Optional.empty();
            }
            projection = fit.get().projection();
            double[] left = observations.aboutLines(projection);
            sigma = scale(left);
            asOne = countAsOne(observations, left, sigma);
            placed = Optional.of(
                    new Placed(projection, fit.get().unitCovariance().scaled(observations.paintVariance(projection))));
        }
        return placed;
    }

    private LineObservations find(
            FloorProjection projection, double reach, double sigma, Optional<Prediction> prediction) {
        LineObservations found = LineObservations.find(samples, paint, projection, width, height, reach * width, sigma);
        return prediction
                .map(p -> found.withLens(p.projection().lens(), Prediction.LENS_ERROR))
                .orElse(found);
    }

    private CourtCalibration none(String reason) {
        return CourtCalibration.none(rules, filmWidth, filmHeight, reason);
    }

    /** 1.4826 times the median absolute residual (Huber, 1981), at least a twentieth of a pixel. */
    private static double scale(double[] residuals) {
        double[] sizes = Arrays.stream(residuals).map(Math::abs).sorted().toArray();
        return sizes.length == 0 ? 1 : Math.max(0.05, 1.4826 * sizes[sizes.length / 2]);
    }

    /**
     * How many points of a line count as one: by how much the variance of a mean of Tukey's weighted residuals exceeds what
     * their weights alone say. With psi the weighted residual over sigma and psi' its slope, that is {@code L mean(psi^2)
     * mean(weight) / mean(psi')^2} (Huber, Robust Statistics, 1981, section 3.2), where L counts neighbours that say the
     * same: one and twice the sum of the autocorrelations of psi up to the first that is not positive (Geyer, Practical
     * Markov chain Monte Carlo, 1992, initial positive sequence).
     */
    private double countAsOne(LineObservations observations, double[] left, double sigma) {
        double[] pull = new double[samples.size()];
        Arrays.fill(pull, Double.NaN);
        double weights = 0;
        double slopes = 0;
        for (int i = 0; i < left.length; i++) {
            double inner = Math.max(0, LineObservations.tukey(left[i] / sigma));
            pull[observations.matches().get(i).sample()] = inner == 0 ? 0 : inner * inner * left[i] / sigma;
            weights += inner * inner / left.length;
            slopes += inner * (5 * inner - 4) / left.length;
        }
        double variance = products(pull, 0);
        double length = 1;
        for (int lag = 1; lag < 40; lag++) {
            double correlation = products(pull, lag) / variance;
            if (!(correlation > 0.05)) {
                break;
            }
            length += 2 * correlation;
        }
        double robust = variance * weights / (slopes * slopes);
        return length * (slopes > 0 && robust > 1 ? robust : 1);
    }

    private double products(double[] residual, int lag) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i + lag < residual.length; i++) {
            boolean both = !Double.isNaN(residual[i]) && !Double.isNaN(residual[i + lag]);
            if (both && samples.line[i] == samples.line[i + lag]) {
                sum += residual[i] * residual[i + lag];
                count++;
            }
        }
        return count > 0 ? sum / count : 0;
    }

    /** The parameters' covariance after the picture is scaled: the homography's first two rows scale with it. */
    private static ProjectionCovariance inFilm(ProjectionCovariance working, double scale) {
        int n = FloorProjection.PARAMETERS;
        double shift = (scale - 1) / 2;
        double[][] map = new double[n][n];
        for (int column = 0; column < 3; column++) {
            map[column][column] = scale;
            map[column][6 + column] = shift;
            map[3 + column][3 + column] = scale;
            map[3 + column][6 + column] = shift;
            map[6 + column][6 + column] = 1;
        }
        map[9][9] = 1;
        return working.mapped(map);
    }

    private List<FloorPoint> matched(LineObservations observations) {
        List<FloorPoint> points = new ArrayList<>();
        for (LineObservations.Match m : observations.matches()) {
            points.add(new FloorPoint(samples.x[m.sample()], samples.y[m.sample()]));
        }
        return points;
    }

    private LinesFit judged(
            CourtCalibration measured, LineObservations observations, Evidence evidence, Scores scores, double sigma) {
        CalibrationStatus status = evidence.status();
        CourtCalibration calibration = status == CalibrationStatus.NONE
                ? none(evidence.reason(status))
                : new CourtCalibration(
                        rules,
                        status,
                        evidence.reason(status),
                        filmWidth,
                        filmHeight,
                        measured.projection(),
                        measured.covariance(),
                        measured.coverage());
        return new LinesFit(
                calibration,
                scores.best(),
                scores.elsewhere(),
                evidence.share,
                evidence.ownPaint,
                sigma,
                shares(observations),
                matched(observations));
    }

    /** The share of each line in sight that carries paint. */
    private SortedMap<String, Double> shares(LineObservations observations) {
        double[] visible = new double[samples.lines.size()];
        double[] found = new double[samples.lines.size()];
        for (int i = 0; i < samples.size(); i++) {
            visible[samples.line[i]] += observations.visibleWeight()[i];
        }
        for (LineObservations.Match m : observations.matches()) {
            found[samples.line[m.sample()]] += m.weight();
        }
        SortedMap<String, Double> shares = new TreeMap<>();
        for (int l = 0; l < visible.length; l++) {
            // Fewer than three independent points of a line say nothing about it.
            if (visible[l] >= 3) {
                shares.put(samples.lines.get(l).name(), found[l] / visible[l]);
            }
        }
        return shares;
    }

    /** Median, over the floor inside the coverage, of the error that the calibration alone adds. */
    private double medianError(CourtCalibration measured) {
        List<Double> errors = new ArrayList<>();
        for (double x = -rules.lengthMetres() / 2; x <= rules.lengthMetres() / 2; x += 1) {
            for (double y = -rules.widthMetres() / 2; y <= rules.widthMetres() / 2; y += 1) {
                FloorPoint at = new FloorPoint(x, y);
                OptionalDouble error =
                        measured.coverage().holds(at) ? measured.errorOfCalibration(at) : OptionalDouble.empty();
                error.ifPresent(errors::add);
            }
        }
        errors.sort(null);
        return errors.isEmpty() ? Double.POSITIVE_INFINITY : errors.get(errors.size() / 2);
    }

    /** What was seen, weighed. */
    private final class Evidence {
        private final double share;
        private final double ownPaint;
        private final double score;
        private final double runnerUp;
        private final double rival;
        private final double motleyRival;
        private final double explained;
        private final double error;
        private final long along;
        private final long across;
        private final long arcs;
        private final boolean arcsMissing;
        private final boolean noArc;
        private final boolean followed;

        /**
         * @param all paint and lines in sight
         * @param apart of these what answers to one line alone
         */
        Evidence(LineObservations all, LineObservations apart, Scores scores, double error, boolean followed) {
            SortedMap<String, Double> shares = shares(all);
            SortedMap<String, Double> own = shares(apart);
            this.followed = followed;
            this.share = share(all);
            this.ownPaint = oneColourShare(apart);
            this.score = scores.best();
            this.runnerUp = scores.elsewhere();
            this.rival = scores.otherRules();
            this.motleyRival = scores.motley();
            this.explained = scores.explained();
            this.error = error;
            this.along = seen(shares, own, 0);
            this.across = seen(shares, own, 1);
            this.arcs = seen(shares, own, 2);
            this.arcsMissing = arcs < ARCS_SEEN * inSight(shares, 2);
            this.noArc = arcs == 0 && inSight(shares, 2) >= 2;
        }

        private long inSight(SortedMap<String, Double> shares, int kind) {
            return samples.lines.stream()
                    .filter(line -> kind(line) == kind && shares.containsKey(line.name()))
                    .count();
        }

        /** Lines that are there, and there by paint of their own. */
        private long seen(SortedMap<String, Double> shares, SortedMap<String, Double> own, int kind) {
            return samples.lines.stream()
                    .filter(line -> kind(line) == kind)
                    .filter(line ->
                            Math.min(shares.getOrDefault(line.name(), 0.0), own.getOrDefault(line.name(), 0.0)) >= SEEN)
                    .count();
        }

        private static int kind(PaintedLine line) {
            if (line instanceof PaintedLine.Straight s) {
                return s.from().yMetres() == s.to().yMetres() ? 0 : 1;
            }
            return 2;
        }

        CalibrationStatus status() {
            if (followed) {
                return statusOfFollowed();
            }
            if (!isACourt() || ambiguous() || error > CourtCalibration.LARGEST_SUPPORTED_ERROR_METRES) {
                return CalibrationStatus.NONE;
            }
            boolean good = share >= GOOD_SHARE
                    && !arcsMissing
                    && Math.min(along, across) >= 2
                    && !amongOthers()
                    && Math.max(rival, motleyRival) <= NEARLY_AS_WELL * score
                    && error <= GOOD_ERROR_METRES;
            return good ? CalibrationStatus.GOOD : CalibrationStatus.WEAK;
        }

        private boolean isACourt() {
            // Any four lines fit some court: the fifth is the first evidence.
            boolean enough = along + across + arcs >= 5 && along >= 1 && across >= 1;
            // Without its arcs a court is told from the parallel lines of other sports by its lines both ways alone.
            boolean straightOnly = arcsMissing && Math.min(along, across) < 2;
            return score >= LEAST_SCORE && share >= LEAST_SHARE && !motley() && enough && !noArc && !straightOnly;
        }

        /** Whether too little of the court is there in one colour: what several sports have painted is no court. */
        private boolean motley() {
            return ownPaint < (explained < GOOD_EXPLAINED_SHARE ? LEAST_OWN_SHARE_AMONG_OTHERS : LEAST_OWN_SHARE);
        }

        /** Whether these may well be some lines of another sport that has more. */
        private boolean amongOthers() {
            return ownPaint < GOOD_OWN_SHARE && explained < GOOD_EXPLAINED_SHARE;
        }

        /** Which court it is was settled before; now the question is whether it is still where its lines are. */
        private CalibrationStatus statusOfFollowed() {
            // Straight lines of other sports pull a court along with them; then it leaves all of its arcs behind.
            if (share < LEAST_SHARE || along + across + arcs < 2 || noArc) {
                return CalibrationStatus.NONE;
            }
            return share >= GOOD_SHARE && error <= GOOD_ERROR_METRES ? CalibrationStatus.GOOD : CalibrationStatus.WEAK;
        }

        private boolean ambiguous() {
            return runnerUp > NEARLY_AS_WELL * score;
        }

        String reason(CalibrationStatus status) {
            String seen = String.format(
                    Locale.ROOT,
                    "%d lines along, %d across and %d arcs of a %s court were found, %.0f in 100 of what is in sight",
                    along,
                    across,
                    arcs,
                    rules.name(),
                    100 * share);
            if (status == CalibrationStatus.NONE) {
                return "No court could be placed: at best " + seen + doubt() + ".";
            }
            if (status == CalibrationStatus.GOOD) {
                return seen + String.format(Locale.ROOT, "; half of the floor is placed to %.3f m or better.", error);
            }
            return seen + ", but " + weakness() + ".";
        }

        private String doubt() {
            if (followed) {
                return "";
            }
            if (motley()) {
                return String.format(Locale.ROOT, ", %.0f in 100 in one colour of paint", 100 * ownPaint);
            }
            if (ambiguous()) {
                return ", and the same paint fits another place of the court nearly as well";
            }
            return error > CourtCalibration.LARGEST_SUPPORTED_ERROR_METRES && Double.isFinite(error)
                    ? String.format(Locale.ROOT, ", and they place half of the floor no better than to %.2f m", error)
                    : "";
        }

        private String weakness() {
            if (rival > NEARLY_AS_WELL * score) {
                return "the court of another rule book fits nearly as well; name the rule book";
            }
            if (motleyRival > NEARLY_AS_WELL * score) {
                return "lines of several colours lie elsewhere as another court would";
            }
            if (amongOthers()) {
                return String.format(
                        Locale.ROOT,
                        "its lines explain only %.0f in 100 of the paint of their colour on that floor",
                        100 * explained);
            }
            if (error > GOOD_ERROR_METRES) {
                return String.format(Locale.ROOT, "they place half of the floor no better than to %.2f m", error);
            }
            if (arcsMissing) {
                return "most of its arcs were not found where they should be";
            }
            return share < GOOD_SHARE ? "much of the court's paint was not found" : "that is few lines";
        }
    }
}
