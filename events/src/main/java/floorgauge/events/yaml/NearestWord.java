package floorgauge.events.yaml;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/** Finds the known word that a misspelt one was meant to be. */
public final class NearestWord {

    private static final int MOST_CHANGES = 3;

    private NearestWord() {}

    /** "did you mean ..." where one of the known words is near, else the list of them. */
    public static String hint(String word, Collection<String> known) {
        List<String> near = known.stream()
                .filter(k -> distance(word, k) <= Math.min(MOST_CHANGES, Math.max(1, word.length() / 2)))
                .sorted(Comparator.<String>comparingInt(k -> distance(word, k)).thenComparing(k -> k))
                .toList();
        return near.isEmpty()
                ? "known are " + String.join(", ", known.stream().sorted().toList())
                : "did you mean '" + near.get(0) + "'?";
    }

    /** Levenshtein distance: insertions, deletions and substitutions. */
    static int distance(String a, String b) {
        int[] previous = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            previous[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int substitution = previous[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(substitution, 1 + Math.min(row[j - 1], previous[j]));
            }
            previous = row;
        }
        return previous[b.length()];
    }
}
