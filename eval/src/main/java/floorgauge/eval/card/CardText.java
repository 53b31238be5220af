package floorgauge.eval.card;

import floorgauge.eval.score.Decimals;
import floorgauge.eval.tracking.TrackingScores;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;

/** The card as Markdown while it grows. */
final class CardText {

    private final StringBuilder text = new StringBuilder();

    void append(String words) {
        text.append(words);
    }

    void heading(String words) {
        text.append("### ").append(words).append("\n\n");
    }

    /** A table's head; figures stand to the right. */
    void table(String... columns) {
        row(columns);
        text.append("| --- ").append("| --: ".repeat(columns.length - 1)).append("|\n");
    }

    void eventTable() {
        table("kind", "precision", "recall", "F1", "90 % interval", "blind guesser's F1");
    }

    void row(String... cells) {
        text.append("| ").append(String.join(" | ", cells)).append(" |\n");
    }

    /** A row of what a name says and its figures. */
    void row(String name, List<String> figures) {
        row(Stream.concat(Stream.of(name), figures.stream()).toArray(String[]::new));
    }

    /** Below a table. */
    void note(String words) {
        text.append('\n').append(words).append("\n\n");
    }

    /** A dash for what is not defined. */
    static String figure(double value, int decimals) {
        return Double.isFinite(value) ? Decimals.of(value, decimals) : "-";
    }

    static List<String> dashes(int count) {
        return Collections.nCopies(count, "-");
    }

    /** HOTA, DetA, AssA, LocA, MOTA, IDF1, switches. */
    static List<String> tracking(TrackingScores scores) {
        return List.of(
                figure(scores.hota().hota(), 3),
                figure(scores.hota().detectionAccuracy(), 3),
                figure(scores.hota().associationAccuracy(), 3),
                figure(scores.hota().localisationAccuracy(), 3),
                figure(scores.clear().mota(), 3),
                figure(scores.identity().idf1(), 3),
                String.valueOf(scores.clear().switches()));
    }

    @Override
    public String toString() {
        return text.toString().strip() + "\n";
    }
}
