package floorgauge.eval.court.view;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtCalibrator;
import floorgauge.court.calibration.CourtOverlay;
import floorgauge.court.rules.RuleSet;
import floorgauge.eval.score.Decimals;
import floorgauge.eval.statistics.Quantiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.opencv.core.Mat;
import org.opencv.imgcodecs.Imgcodecs;

/**
 * Courts found without a click in rendered views, as a table. Arguments: the file to write, the first seed, how many views,
 * and, where wanted, a folder for pictures of the views that were not found, and one that keeps outcomes from run to run.
 */
public final class CourtTable {

    /** First seed of the views that nothing was developed on; development uses those below 9000. */
    public static final long HELD_OUT = 9001;

    private static final int FRAMES = 6;

    /** 0.95 quantile of chi squared with two degrees of freedom, {@code -2 ln 0.05}. */
    private static final double CHI_SQUARE_95 = -2 * Math.log(0.05);

    private final List<ViewOutcome> outcomes;

    private CourtTable(List<ViewOutcome> outcomes) {
        this.outcomes = List.copyOf(outcomes);
    }

    /** @param arguments FILE FIRST_SEED VIEWS [FOLDER [KEPT]] */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length < 3) {
            System.err.println("court table: expected FILE FIRST_SEED VIEWS [FOLDER [KEPT]]");
            System.exit(2);
        }
        long first = Long.parseLong(arguments[1]);
        int count = Integer.parseInt(arguments[2]);
        Optional<Path> pictures = arguments.length > 3 ? Optional.of(Path.of(arguments[3])) : Optional.empty();
        Optional<KeptOutcomes> kept =
                arguments.length > 4 ? Optional.of(new KeptOutcomes(Path.of(arguments[4]))) : Optional.empty();
        CourtTable table = measure(first, count, pictures, kept);
        Files.writeString(Path.of(arguments[0]), table.markdown(first));
    }

    /**
     * Renders and calibrates views of following seeds, telling the rule book.
     *
     * @param pictures a folder for pictures of the views that were not found
     */
    public static CourtTable measure(long firstSeed, int count, Optional<Path> pictures) throws IOException {
        return measure(firstSeed, count, pictures, Optional.empty());
    }

    private static CourtTable measure(long firstSeed, int count, Optional<Path> pictures, Optional<KeptOutcomes> kept)
            throws IOException {
        List<ViewOutcome> outcomes = new ArrayList<>();
        for (long seed = firstSeed; seed < firstSeed + count; seed++) {
            Optional<ViewOutcome> before = kept.isPresent() ? kept.get().read(seed) : Optional.empty();
            ViewOutcome outcome = before.isPresent() ? before.get() : outcome(CourtView.of(seed), pictures);
            if (kept.isPresent() && before.isEmpty()) {
                kept.get().write(outcome);
            }
            System.out.println(line(outcome));
            outcomes.add(outcome);
        }
        return new CourtTable(outcomes);
    }

    private static ViewOutcome outcome(CourtView view, Optional<Path> pictures) throws IOException {
        List<Mat> frames = view.frames(FRAMES);
        try {
            long start = ProcessorTime.nanoseconds();
            CourtCalibration calibration = CourtCalibrator.fromLines(Optional.of(view.rules()), frames);
            double seconds = (ProcessorTime.nanoseconds() - start) * 1e-9;
            ViewOutcome outcome = ViewOutcome.of(view, calibration, view.feet(FRAMES), seconds);
            if (pictures.isPresent() && !outcome.found()) {
                draw(frames.get(0), view.seed(), calibration, pictures.get());
            }
            return outcome;
        } finally {
            frames.forEach(Mat::release);
        }
    }

    private static String line(ViewOutcome o) {
        return String.format(
                Locale.ROOT,
                "%d %s %s%s %.1f m high: %s, %.3f m, %.2f, %.1f s. %s",
                o.view().seed(),
                o.view().rules().name(),
                o.view().place(),
                o.view().shared() ? " shared floor" : "",
                o.view().heightMetres(),
                o.status(),
                o.medianMetres(),
                new CourtTable(List.of(o)).meanSquaredNormalisedError(),
                o.seconds(),
                o.reason());
    }

    private static void draw(Mat frame, long seed, CourtCalibration calibration, Path folder) throws IOException {
        Files.createDirectories(folder);
        if (calibration.status() != CalibrationStatus.NONE) {
            CourtOverlay.draw(frame, calibration);
        }
        Imgcodecs.imwrite(folder.resolve(seed + ".png").toString(), frame);
    }

    /** The outcomes in order of seed. */
    public List<ViewOutcome> outcomes() {
        return outcomes;
    }

    /** Share of views in which the court was found where it lies. */
    public double foundShare() {
        return share(outcomes, ViewOutcome::found);
    }

    /** Share of views whose court was called good although it lies elsewhere. */
    public double falseGoodShare() {
        return share(outcomes, ViewOutcome::falseGood);
    }

    /** Error at supported feet of the found views. */
    public double errorQuantileMetres(double p) {
        return Quantiles.of(errors(outcomes), p);
    }

    /** Mean of the squared error over its covariance, at supported feet of the found views: 2 where it is honest. */
    public double meanSquaredNormalisedError() {
        return samples(outcomes).stream()
                .mapToDouble(ViewOutcome.FootError::squaredNormalised)
                .average()
                .orElse(Double.NaN);
    }

    /** Share of it below chi square's 0.95 quantile: 0.95 where it is honest. */
    public double shareWithinNinetyFive() {
        return share(samples(outcomes), s -> s.squaredNormalised() <= CHI_SQUARE_95);
    }

    private static <T> double share(List<T> all, Predicate<T> which) {
        return all.isEmpty() ? Double.NaN : (double) all.stream().filter(which).count() / all.size();
    }

    private static List<ViewOutcome.FootError> samples(List<ViewOutcome> of) {
        return of.stream()
                .filter(ViewOutcome::found)
                .flatMap(o -> o.supported().stream())
                .toList();
    }

    private static double[] errors(List<ViewOutcome> of) {
        return samples(of).stream().mapToDouble(ViewOutcome.FootError::metres).toArray();
    }

    /** The table as it stands in docs. */
    public String markdown(long firstSeed) {
        StringBuilder text = new StringBuilder("# Courts found without a click\n\n    eval/court-table\n\nMade by the"
                + " command above; not edited by hand. ");
        text.append(outcomes.size())
                .append(" rendered views of seeds ")
                .append(firstSeed)
                .append(" and up, on which nothing was developed: ten players, ")
                .append(FRAMES)
                .append(" frames of 1280 x 720 a view, the rule book given. Errors are those at players' feet, by the")
                .append(" calibration alone, where it says that its evidence carries. Found: the median foot lies")
                .append(" within 0.30 m. Falsely good: status good, and not found. Squared error over covariance: 2")
                .append(" on average, and 0.95 of it within the 0.95 quantile, where the covariance is honest.\n\n")
                .append("| views | number | found | falsely good | median error | 95th percentile | feet supported |")
                .append(" squared error over covariance | within 0.95 quantile | median processor time |\n")
                .append("| --- | --: | --: | --: | --: | --: | --: | --: | --: | --: |\n");
        row(text, "all", outcomes);
        for (RuleSet rules : RuleSet.all()) {
            row(text, rules.name(), where(o -> o.view().rules().equals(rules)));
        }
        row(text, "camera 1.5 to 3 m high", where(o -> o.view().heightMetres() < 3));
        row(
                text,
                "camera 3 to 6 m high",
                where(o -> o.view().heightMetres() >= 3 && o.view().heightMetres() < 6));
        row(text, "camera 6 to 10 m high", where(o -> o.view().heightMetres() >= 6));
        row(text, "from the side", where(o -> o.view().place().equals("side")));
        row(text, "from a corner", where(o -> o.view().place().equals("corner")));
        row(text, "from behind an end line", where(o -> o.view().place().equals("end")));
        row(text, "this court alone on the floor", where(o -> !o.view().shared()));
        row(text, "lines of three other sports too", where(o -> o.view().shared()));
        return text.toString();
    }

    private List<ViewOutcome> where(Predicate<ViewOutcome> which) {
        return outcomes.stream().filter(which).toList();
    }

    private static void row(StringBuilder text, String name, List<ViewOutcome> of) {
        if (of.isEmpty()) {
            return;
        }
        CourtTable own = new CourtTable(of);
        long feet = of.stream()
                .filter(ViewOutcome::found)
                .mapToLong(ViewOutcome::feet)
                .sum();
        double supported = feet == 0 ? Double.NaN : (double) samples(of).size() / feet;
        text.append("| ")
                .append(String.join(
                        " | ",
                        name,
                        String.valueOf(of.size()),
                        Decimals.of(own.foundShare(), 3),
                        Decimals.of(own.falseGoodShare(), 3),
                        Decimals.of(own.errorQuantileMetres(0.5), 3) + " m",
                        Decimals.of(own.errorQuantileMetres(0.95), 3) + " m",
                        Decimals.of(supported, 2),
                        Decimals.of(own.meanSquaredNormalisedError(), 2),
                        Decimals.of(own.shareWithinNinetyFive(), 3),
                        Decimals.of(
                                        Quantiles.of(
                                                of.stream()
                                                        .mapToDouble(ViewOutcome::seconds)
                                                        .toArray(),
                                                0.5),
                                        1) + " s"))
                .append(" |\n");
    }
}
