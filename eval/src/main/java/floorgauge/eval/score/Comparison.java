package floorgauge.eval.score;

import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.eval.statistics.PairedDifference;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Two runs over the same films, side by side.
 *
 * @param lines every measure that both runs have, in order of group and name
 * @param appeared errors that only the second run makes
 * @param gone errors that only the first run made
 */
public record Comparison(List<Line> lines, List<ErrorRow> appeared, List<ErrorRow> gone) {

    /** What became of a measure. */
    public enum Verdict {
        BETTER,
        WORSE,
        /** The interval of the difference holds zero, or too few films tell. */
        WITHIN_NOISE
    }

    /**
     * One measure.
     *
     * @param measure what it is about
     * @param first in the first run
     * @param second in the second run
     * @param difference second less first, with an interval from drawing films of both runs together
     */
    public record Line(Measure measure, double first, double second, PairedDifference difference) {

        public Line {
            Objects.requireNonNull(measure, "measure");
            Objects.requireNonNull(difference, "difference");
        }

        public Verdict verdict() {
            if (!difference.beyondNoise() || measure.better() == Measure.Better.NEITHER) {
                return Verdict.WITHIN_NOISE;
            }
            boolean up = difference.difference() > 0;
            return up == (measure.better() == Measure.Better.HIGHER) ? Verdict.BETTER : Verdict.WORSE;
        }
    }

    public Comparison {
        lines = List.copyOf(lines);
        appeared = List.copyOf(appeared);
        gone = List.copyOf(gone);
    }

    /** Films that only one run has are left out. */
    public static Comparison of(RunSummary first, RunSummary second, ClipBootstrap bootstrap) {
        Map<String, FilmSums> before = new TreeMap<>();
        first.films().forEach(f -> before.put(f.film(), f));
        List<ClipBootstrap.Pair<FilmSums>> pairs = new ArrayList<>();
        for (FilmSums film : second.films()) {
            FilmSums same = before.get(film.film());
            if (same != null) {
                pairs.add(new ClipBootstrap.Pair<>(same, film));
            }
        }
        TreeSet<Measure> measures = new TreeSet<>();
        pairs.forEach(p -> measures.addAll(p.first().sums().keySet()));
        pairs.forEach(p -> measures.addAll(p.second().sums().keySet()));
        List<Line> lines = measures.stream().map(m -> line(m, pairs, bootstrap)).toList();
        return new Comparison(
                lines, without(second.errors(), first.errors()), without(first.errors(), second.errors()));
    }

    /** The measures that got worse beyond noise. */
    public List<Line> worse() {
        return lines.stream().filter(l -> l.verdict() == Verdict.WORSE).toList();
    }

    /** The errors that appeared in what got worse, in order of film; all that appeared where only a total got worse. */
    public List<ErrorRow> worseRows() {
        List<ErrorRow> rows = appeared.stream()
                .filter(row -> worse().stream().anyMatch(line -> line.measure().isAbout(row.about())))
                .toList();
        return rows.isEmpty() && !worse().isEmpty() ? appeared : rows;
    }

    private static Line line(Measure measure, List<ClipBootstrap.Pair<FilmSums>> pairs, ClipBootstrap bootstrap) {
        return new Line(
                measure,
                FilmSums.value(pairs.stream().map(ClipBootstrap.Pair::first).toList(), measure),
                FilmSums.value(pairs.stream().map(ClipBootstrap.Pair::second).toList(), measure),
                bootstrap.compare(pairs, films -> FilmSums.value(films, measure)));
    }

    private static List<ErrorRow> without(List<ErrorRow> rows, List<ErrorRow> known) {
        TreeSet<String> keys = new TreeSet<>();
        known.forEach(r -> keys.add(key(r)));
        return rows.stream().filter(r -> !keys.contains(key(r))).toList();
    }

    /** The same error in two runs: findings are numbered anew and times wobble, so neither takes part. */
    private static String key(ErrorRow row) {
        return row.film() + "|" + Math.round(row.timeSeconds()) + "|" + row.about() + "|" + row.problem() + "|"
                + row.expected();
    }

    /** The comparison in words, one line for each measure that changed beyond noise, then the errors that came. */
    public String inWords() {
        StringBuilder text = new StringBuilder();
        lines.stream().filter(l -> l.verdict() != Verdict.WITHIN_NOISE).forEach(l -> write(l, text));
        if (text.length() == 0) {
            text.append("nothing changed beyond noise\n");
        }
        appeared.forEach(row -> write(row, text));
        return text.toString();
    }

    /** Only what got worse beyond noise, and the errors behind it; empty text where nothing did. */
    public String worseInWords() {
        StringBuilder text = new StringBuilder();
        worse().forEach(line -> write(line, text));
        worseRows().forEach(row -> write(row, text));
        return text.toString();
    }

    private static void write(Line line, StringBuilder text) {
        text.append(line.verdict() == Verdict.BETTER ? "better  " : "worse   ")
                .append(line.measure().key())
                .append(": ")
                .append(Decimals.of(line.first(), 3))
                .append(" to ")
                .append(Decimals.of(line.second(), 3))
                .append(" (difference ")
                .append(Decimals.of(line.difference().interval().low(), 3))
                .append(" to ")
                .append(Decimals.of(line.difference().interval().high(), 3))
                .append(")\n");
    }

    private static void write(ErrorRow row, StringBuilder text) {
        text.append("new     ")
                .append(row.film())
                .append(' ')
                .append(Decimals.of(row.timeSeconds(), 2))
                .append(" s, ")
                .append(row.about())
                .append(", ")
                .append(row.problem())
                .append(": expected ")
                .append(row.expected())
                .append(", came ")
                .append(row.came())
                .append("  ")
                .append(row.link())
                .append('\n');
    }
}
