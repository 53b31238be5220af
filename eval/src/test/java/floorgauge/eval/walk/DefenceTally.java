package floorgauge.eval.walk;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.sampleclips.labels.LabelledEvent;
import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;

/** How often the defence's answer to a screen is the labelled coverage. */
final class DefenceTally {

    private static final String PREFIX = "defence: ";

    private final Map<String, Integer> counts = new TreeMap<>();
    private int right;
    private int all;

    void take(LabelledEvent label, Finding finding) {
        String told = label.words().get("coverage");
        if (told == null) {
            return;
        }
        String answer = finding.figures().stream()
                .filter(f -> f.name().startsWith(PREFIX))
                .max(Comparator.comparingDouble(Figure::value))
                .map(f -> f.name().substring(PREFIX.length()))
                .orElse("none");
        all++;
        right += answer.equals(told) ? 1 : 0;
        counts.merge(told + " read as " + answer, 1, Integer::sum);
    }

    void print() {
        System.out.println("defence's answer: " + right + " of " + all + " " + counts);
    }
}
