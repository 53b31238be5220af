package floorgauge.app.sheet;

import floorgauge.app.drawing.FigureText;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Unit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** One page a practice: how often each standard was missed and what that cost, and the costliest misses drawn. */
public final class PracticePage {

    private static final int DRAWN = 6;

    private PracticePage() {}

    /**
     * The page.
     *
     * @param title such as the practice's day
     * @param films of the practice, in order
     */
    public static String of(String title, List<WallFilm> films, PlayerNames names) {
        WallPage page = new WallPage(names);
        List<WallFinding> all = WallFinding.of(films);
        List<WallFinding> flags =
                all.stream().filter(w -> w.finding().kind().isFlag()).toList();
        int possessions = films.stream().mapToInt(f -> f.possessions().size()).sum();
        page.begin("Practice", title, lede(films.size(), possessions, flags.size()));
        if (!flags.isEmpty()) {
            table(page.html(), flags, possessions);
            List<WallFinding> costliest = new ArrayList<>(flags);
            costliest.sort(WallFinding.COSTLIEST);
            page.findings("The costliest", costliest.subList(0, Math.min(DRAWN, costliest.size())));
        }
        return page.finish();
    }

    private static String lede(int films, int possessions, int flags) {
        String seen = films
                + (films == 1 ? " film, " : " films, ")
                + possessions
                + (possessions == 1 ? " possession. " : " possessions. ");
        return seen
                + (flags == 0
                        ? "No standard was missed in what could be seen."
                        : flags == 1 ? "One standard missed." : flags + " standards missed.");
    }

    private static void table(Html html, List<WallFinding> flags, int possessions) {
        Map<FindingKind, List<WallFinding>> byKind = new EnumMap<>(FindingKind.class);
        flags.forEach(w -> byKind.computeIfAbsent(w.finding().kind(), k -> new ArrayList<>())
                .add(w));
        html.open("table").open("thead").open("tr");
        for (String head : List.of("Standard", "Missed", "In possessions", "Mean cost", "Sure to at least 8 in 10")) {
            html.element("th", "scope=\"col\"", head);
        }
        html.close("tr").close("thead").open("tbody");
        byKind.forEach((kind, findings) -> {
            long sure = findings.stream()
                    .filter(w -> w.finding().probability() >= 0.8)
                    .count();
            long touched = findings.stream()
                    .map(w -> w.film().film().sha256()
                            + w.possession().possession().number())
                    .distinct()
                    .count();
            html.open("tr").element("th", "scope=\"row\"", kind.words());
            html.element("td", "class=\"figure\"", String.valueOf(findings.size()));
            html.element("td", "class=\"figure\"", touched + " of " + possessions);
            html.element("td", "class=\"figure\"", meanCost(findings));
            html.element("td", "class=\"figure\"", String.valueOf(sure));
            html.close("tr");
        });
        html.close("tbody").close("table");
    }

    /** The mean of the costs in the unit that most have; costs in another unit are left out of it. */
    private static String meanCost(List<WallFinding> findings) {
        Map<Unit, List<Figure>> byUnit = new EnumMap<>(Unit.class);
        findings.forEach(w -> w.finding()
                .severity()
                .ifPresent(s -> byUnit.computeIfAbsent(s.cost().unit(), u -> new ArrayList<>())
                        .add(s.cost())));
        return byUnit.values().stream()
                .max(java.util.Comparator.comparingInt(List::size))
                .map(costs -> FigureText.of(Means.of(costs)))
                .orElse("");
    }
}
