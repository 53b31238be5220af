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
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import org.opencv.core.Mat;
import org.opencv.imgcodecs.Imgcodecs;

/**
 * Courts found without a click in rendered views, as a table. Arguments: the file to write, the seeds, and, where wanted, a folder for pictures of the views that were not found, and one that keeps outcomes from run to run.
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

    /** @param arguments FILE SEEDS [FOLDER [KEPT]], with seeds such as 9001-9120,9150 */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length < 2) {
            System.err.println("court table: expected FILE SEEDS [FOLDER [KEPT]]");
            System.exit(2);
        }
        Optional<Path> pictures = arguments.length > 2 ? Optional.of(Path.of(arguments[2])) : Optional.empty();
        Optional<KeptOutcomes> kept =
                arguments.length > 3 ? Optional.of(new KeptOutcomes(Path.of(arguments[3]))) : Optional.empty();
        CourtTable table = measure(seeds(arguments[1]), pictures, kept);
        Files.writeString(Path.of(arguments[0]), table.markdown());
    }

    private static long[] seeds(String ranges) {
        return Arrays.stream(ranges.split(",", -1))
                .flatMapToLong(range -> {
                    String[] ends = range.split("-", 2);
                    return LongStream.rangeClosed(Long.parseLong(ends[0]), Long.parseLong(ends[ends.length - 1]));
                })
                .toArray();
    }

    /**
     * Renders and calibrates views of following seeds, telling the rule book.
     *
     * @param pictures a folder for pictures of the views that were not found
     */
    public static CourtTable measure(long firstSeed, int count, Optional<Path> pictures) throws IOException {
        return measure(LongStream.range(firstSeed, firstSeed + count).toArray(), pictures, Optional.empty());
    }

    private static CourtTable measure(long[] seeds, Optional<Path> pictures, Optional<KeptOutcomes> kept)
            throws IOException {
        List<ViewOutcome> outcomes = new ArrayList<>();
        for (long seed : seeds) {
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
    public String markdown() {
        StringBuilder text = new StringBuilder("# Courts found without a click\n\n    eval/court-table --seeds ");
        text.append(ranges())
                .append("\n\nMade by the command above; not edited by hand. ")
                .append(outcomes.size())
                .append(" rendered views, on whose seeds nothing was developed: ten players, ")
                .append(FRAMES)
                .append(
                        " frames of 1280 x 720 a view, the rule book given. Every build makes the table of the first four")
                .append(
                        " anew (`CourtTableTest`, `eval/target/court-table.md`) and fails where a share or an error in it")
                .append(" leaves its bounds. Errors are those at players' feet, by the")
                .append(" calibration alone, where it says that its evidence carries. Found: the median foot lies")
                .append(" within 0.30 m. Falsely good: status good, and not found. Squared error over covariance: 2")
                .append(" on average, and 0.95 of it within the 0.95 quantile, where the covariance is honest.\n\n")
                .append("| views | number | found | falsely good | median error | 95th percentile | feet supported |")
                .append(" squared error over covariance | within 0.95 quantile | median processor time |\n")
                .append("| --- | --: | --: | --: | --: | --: | --: | --: | --: | --: |\n");
        row(text, "all", outcomes);
        row(text, "called good", where(o -> o.status() == CalibrationStatus.GOOD));
        row(text, "called weak", where(o -> o.status() == CalibrationStatus.WEAK));
        row(text, "called none", where(o -> o.status() == CalibrationStatus.NONE));
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

    /** The seeds as ranges, such as 9001-9120,9150. */
    private String ranges() {
        List<String> ranges = new ArrayList<>();
        int first = 0;
        for (int i = 1; i <= outcomes.size(); i++) {
            long last = outcomes.get(i - 1).view().seed();
            if (i == outcomes.size() || outcomes.get(i).view().seed() != last + 1) {
                long from = outcomes.get(first).view().seed();
                ranges.add(from == last ? String.valueOf(from) : from + "-" + last);
                first = i;
            }
        }
        return String.join(",", ranges);
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
