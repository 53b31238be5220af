package floorgauge.app.sheet;

import floorgauge.app.drawing.FigureText;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** One page a player: what he did, how well it was measured to be, the best of it and what to work on, drawn. */
public final class PlayerPage {

    private static final int DRAWN = 3;

    /** As many as leave room for the drawings on one sheet of paper. */
    private static final int MOST_ROWS = 6;

    private static final Set<Role> DEFENDING = EnumSet.of(Role.DEFENDER, Role.USER_DEFENDER, Role.SCREENER_DEFENDER);

    /** The figure that sums a kind up; others have none. */
    private static final String QUALITY = "quality";

    private PlayerPage() {}

    /**
     * Someone and the findings in which he has a role.
     *
     * @param name to be read
     * @param parts in the order of films and findings
     */
    private record Parts(String name, List<Part> parts) {}

    /**
     * A role in a finding.
     *
     * @param role what he did
     * @param wall the finding
     */
    private record Part(Role role, WallFinding wall) {}

    /**
     * A page for everyone with an attacking role.
     *
     * @return the pages by the player's name, in order of name; who has no name is called by film and number
     */
    public static Map<String, String> of(List<WallFilm> films, PlayerNames names) {
        Map<String, Parts> players = new TreeMap<>();
        for (WallFinding wall : WallFinding.of(films)) {
            for (RoleHolder holder : wall.finding().roles()) {
                if (!DEFENDING.contains(holder.role())) {
                    String name = name(wall.film(), holder.trackId(), names, films.size());
                    players.computeIfAbsent(name, n -> new Parts(n, new ArrayList<>()))
                            .parts()
                            .add(new Part(holder.role(), wall));
                }
            }
        }
        Map<String, String> pages = new LinkedHashMap<>();
        players.forEach((name, player) -> pages.put(name, page(player, names)));
        return pages;
    }

    private static String name(WallFilm film, int trackId, PlayerNames names, int films) {
        Optional<String> known = names.nameOf(film.film().sha256(), trackId);
        return known.orElseGet(
                () -> "#" + trackId + (films > 1 ? " on " + film.film().name() : ""));
    }

    private static String page(Parts player, PlayerNames names) {
        WallPage page = new WallPage(names);
        List<WallFinding> flags = player.parts().stream()
                .map(Part::wall)
                .filter(w -> w.finding().kind().isFlag())
                .distinct()
                .sorted(WallFinding.COSTLIEST)
                .toList();
        page.begin("Player", player.name(), lede(player, flags.size()));
        table(page.html(), player);
        page.findings("To work on", flags.subList(0, Math.min(DRAWN, flags.size())));
        best(player).ifPresent(w -> page.findings("To keep", List.of(w)));
        return page.finish();
    }

    private static String lede(Parts player, int flags) {
        long findings = player.parts().stream().map(Part::wall).distinct().count();
        String had = "A role in " + findings + (findings == 1 ? " finding. " : " findings. ");
        return had
                + (flags == 0
                        ? "No standard was missed in what could be seen."
                        : flags == 1 ? "One standard missed." : flags + " standards missed.");
    }

    /**
     * A line of the table.
     *
     * @param role what he did
     * @param kind in what
     * @param findings the times he did
     */
    private record Row(Role role, FindingKind kind, List<WallFinding> findings) {}

    private static void table(Html html, Parts player) {
        Map<Role, Map<FindingKind, List<WallFinding>>> counts = new TreeMap<>();
        player.parts()
                .forEach(p -> counts.computeIfAbsent(p.role(), r -> new TreeMap<>())
                        .computeIfAbsent(p.wall().finding().kind(), k -> new ArrayList<>())
                        .add(p.wall()));
        html.open("table").open("thead").open("tr");
        for (String head : List.of("As", "What", "Times", "Mean quality")) {
            html.element("th", "scope=\"col\"", head);
        }
        html.close("tr").close("thead").open("tbody");
        List<Row> rows = new ArrayList<>();
        counts.forEach((role, kinds) -> kinds.forEach((kind, findings) -> rows.add(new Row(role, kind, findings))));
        // Missed standards first, then what he did most; the rest is on the films' own sheets.
        rows.sort(Comparator.comparing((Row row) -> !row.kind().isFlag())
                .thenComparing(row -> -row.findings().size()));
        rows.stream().limit(MOST_ROWS).forEach(row -> {
            html.open("tr").element("th", "scope=\"row\"", row.role().words());
            html.element("td", row.kind().words() + (row.kind().isFlag() ? ", missed" : ""));
            html.element("td", "class=\"figure\"", String.valueOf(row.findings().size()));
            html.element("td", "class=\"figure\"", quality(row.findings()));
            html.close("tr");
        });
        html.close("tbody").close("table");
    }

    private static String quality(List<WallFinding> findings) {
        List<Figure> qualities = findings.stream()
                .flatMap(w -> w.finding().figure(QUALITY).stream())
                .toList();
        return qualities.isEmpty() ? "" : FigureText.of(Means.of(qualities));
    }

    /** The screen of most quality that he set or used and that missed no standard. */
    private static Optional<WallFinding> best(Parts player) {
        return player.parts().stream()
                .map(Part::wall)
                .filter(w -> w.finding().kind() == FindingKind.SCREEN)
                .filter(w -> w.finding().figure(QUALITY).isPresent())
                .max(Comparator.comparingDouble(
                        w -> w.finding().figure(QUALITY).orElseThrow().value()));
    }
}
