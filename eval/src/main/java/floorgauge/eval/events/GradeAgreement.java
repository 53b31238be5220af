package floorgauge.eval.events;

import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.eval.statistics.Estimate;
import floorgauge.eval.statistics.RankCorrelation;
import floorgauge.eval.statistics.WeightedKappa;
import java.util.List;

/**
 * Screen quality, 0 to 100, against a coach's grades, 1 to 5.
 *
 * @param graded pairs with a grade and a quality
 * @param kappa quadratic weighted kappa of the grade and the quality put into five equal bands
 * @param spearman rank correlation of grade and quality
 */
public record GradeAgreement(int graded, Estimate kappa, Estimate spearman) {

    /** Name of the figure that holds a screen's quality. */
    public static final String QUALITY = "quality";

    private static final int GRADES = 5;
    private static final double BAND = 100.0 / GRADES;

    /** @param films the matches of each film: the intervals resample films */
    public static GradeAgreement of(List<EventMatches> films, ClipBootstrap bootstrap) {
        List<List<EventMatches.Pair>> graded = films.stream()
                .map(f -> f.pairs().stream().filter(GradeAgreement::comparable).toList())
                .filter(pairs -> !pairs.isEmpty())
                .toList();
        return new GradeAgreement(
                graded.stream().mapToInt(List::size).sum(),
                bootstrap.estimate(graded, GradeAgreement::kappa),
                bootstrap.estimate(graded, GradeAgreement::spearman));
    }

    /** The grade that a quality of 0 to 100 stands for, 1 to 5. */
    public static int gradeOf(double quality) {
        return (int) Math.max(1, Math.min(GRADES, Math.floor(quality / BAND) + 1));
    }

    private static boolean comparable(EventMatches.Pair pair) {
        return pair.label().grade().isPresent()
                && !pair.label().cantTell().contains("grade")
                && (pair.result().figures().containsKey(QUALITY)
                        || pair.result().grade().isPresent());
    }

    private static double kappa(List<List<EventMatches.Pair>> films) {
        List<EventMatches.Pair> pairs = films.stream().flatMap(List::stream).toList();
        int[] coach =
                pairs.stream().mapToInt(p -> p.label().grade().getAsInt() - 1).toArray();
        int[] ours = pairs.stream().mapToInt(p -> resultGrade(p) - 1).toArray();
        return WeightedKappa.quadratic(coach, ours, GRADES);
    }

    private static double spearman(List<List<EventMatches.Pair>> films) {
        List<EventMatches.Pair> pairs = films.stream().flatMap(List::stream).toList();
        return RankCorrelation.spearman(
                pairs.stream().mapToDouble(p -> p.label().grade().getAsInt()).toArray(),
                pairs.stream().mapToDouble(GradeAgreement::resultQuality).toArray());
    }

    private static int resultGrade(EventMatches.Pair pair) {
        return pair.result().grade().orElseGet(() -> gradeOf(resultQuality(pair)));
    }

    /** A second annotator gives grades and no quality. */
    private static double resultQuality(EventMatches.Pair pair) {
        Double quality = pair.result().figures().get(QUALITY);
        return pair.result().grade().isPresent() || quality == null
                ? pair.result().grade().getAsInt()
                : quality;
    }
}
