package floorgauge.events.script;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A step's line cut into its parts.
 *
 * @param who its first word
 * @param verb what stands between it and the first of the words for, to, at, off; articles left out
 * @param parts what follows each of those words
 * @param kind what stands in brackets at the end; empty without
 */
record StepText(String who, String verb, Map<String, String> parts, String kind) {

    private static final List<String> WORDS = List.of("for", "to", "at", "off");
    private static final Pattern KIND = Pattern.compile("\\(([^)]*)\\)\\s*$");

    static StepText split(String line) {
        Matcher brackets = KIND.matcher(line);
        String kind = brackets.find() ? brackets.group(1).strip() : "";
        String plain = kind.isEmpty() ? line : line.substring(0, brackets.start());
        List<String> words = new ArrayList<>(List.of(plain.strip().split("\\s+")));
        words.removeIf(w -> w.equals("the") || w.equals("a"));
        String who = words.isEmpty() ? "" : words.get(0);
        Map<String, String> parts = new LinkedHashMap<>();
        StringBuilder verb = new StringBuilder();
        String part = "";
        for (int i = 1; i < words.size(); i++) {
            String word = words.get(i);
            // The word off belongs to the verb in "hands off".
            boolean begins = WORDS.contains(word)
                    && !(word.equals("off") && verb.toString().equals("hands"));
            if (begins) {
                part = word;
                parts.put(part, "");
            } else if (part.isEmpty()) {
                verb.append(verb.isEmpty() ? "" : " ").append(word);
            } else {
                parts.merge(part, word, (a, b) -> a.isEmpty() ? b : a + " " + b);
            }
        }
        return new StepText(who, verb.toString(), parts, kind);
    }
}
