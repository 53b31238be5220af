package floorgauge.app.sheet;

import floorgauge.app.drawing.FigureText;
import floorgauge.court.track.Team;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Possession;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.stream.Collectors;

/** What sheets and pages say in the same words. */
public final class Phrases {

    private Phrases() {}

    /** A count with its noun. */
    public static String counted(long count, String noun) {
        String plural = noun.endsWith("pass") ? noun + "es" : noun + "s";
        return count + " " + (count == 1 ? noun : plural);
    }

    /** Such as {@code 2 late passes, 1 weak screen}; in the order of the kinds' names. */
    public static String countedKinds(List<FindingKind> kinds) {
        return kinds.stream()
                .map(FindingKind::words)
                .collect(Collectors.groupingBy(k -> k, TreeMap::new, Collectors.counting()))
                .entrySet()
                .stream()
                .map(e -> counted(e.getValue(), e.getKey()))
                .collect(Collectors.joining(", "));
    }

    /** Kind and label of a finding, once where they are one. */
    public static String title(Finding finding) {
        String kind = finding.kind().words();
        String label = finding.label();
        String words = label.isEmpty() ? kind : label.contains(kind) ? label : kind + ", " + label;
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** How sure a finding is; blank where its sentence says so already. */
    public static String sureness(Finding finding) {
        String words = FigureText.sureness(finding.probability());
        return finding.sentence().contains(words) ? "" : words;
    }

    /** Words with a sign between them, the blank ones left out. */
    public static String joined(String sign, String... words) {
        return Arrays.stream(words).filter(w -> !w.isBlank()).collect(Collectors.joining(sign));
    }

    /** The heading of a possession, with its times. */
    public static void heading(Html html, Possession possession) {
        html.open("h2").text("Possession " + possession.number() + " ");
        html.element(
                "span",
                "class=\"aside\"",
                FigureText.time(possession.fromSeconds()) + " to " + FigureText.time(possession.toSeconds()));
        html.close("h2");
    }

    /**
     * Who attacks whom, and how it ends.
     *
     * @param called what a track is called
     */
    public static String describe(Possession possession, IntFunction<String> called) {
        return team(possession.attack()) + " attacks, " + FigureText.sureness(possession.attackProbability())
                + ". Attackers " + all(possession.attackers(), called) + "; defenders "
                + all(possession.defenders(), called) + ". Ends with: " + possession.outcome() + ".";
    }

    private static String all(List<Integer> ids, IntFunction<String> called) {
        return ids.isEmpty() ? "none" : ids.stream().map(called::apply).collect(Collectors.joining(", "));
    }

    private static String team(Team team) {
        return switch (team) {
            case FIRST -> "The first team";
            case SECOND -> "The second team";
            default -> "A team that could not be told";
        };
    }
}
