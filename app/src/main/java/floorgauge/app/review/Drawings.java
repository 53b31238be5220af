package floorgauge.app.review;

import floorgauge.app.result.Replay;
import floorgauge.app.result.TracksWindow;
import floorgauge.app.store.FilmFolder;
import floorgauge.app.store.Films;
import floorgauge.app.store.Kept;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.StoredPossession;
import floorgauge.court.failure.MendableException;
import floorgauge.court.rules.RuleSet;
import floorgauge.events.diagram.Diagram;
import floorgauge.events.diagram.DiagramPanel;
import floorgauge.events.diagram.Diagrams;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.Trail;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The drawn diagrams of a film's possessions, as markup. Drawing needs the tracks, so what was drawn is kept in the store
 * until the film is measured anew or its players change.
 */
final class Drawings {

    /** Styles in attributes are refused by the page's own policy; the same properties stand as SVG attributes. */
    private static final Pattern STYLE = Pattern.compile(" style=\"([^\"]*)\"");

    private final Films films;
    private final Kept kept;

    Drawings(Films films, Kept kept) {
        this.films = films;
        this.kept = kept;
    }

    /** Markup by possession number; a possession whose tracks cannot be read is missing. */
    Map<Integer, String> ofPossessions(
            StoredFilm film, List<StoredPossession> possessions, List<StoredFinding> findings, Names names) {
        Map<Integer, String> drawn = kept.drawings(film.id());
        if (drawn.keySet()
                .containsAll(
                        possessions.stream().map(p -> p.possession().number()).toList())) {
            return drawn;
        }
        Map<Integer, String> fresh = new TreeMap<>();
        List<TracksWindow.Place> places;
        try {
            places = TracksWindow.all(FilmFolder.tracks(film)).places();
        } catch (MendableException e) {
            return fresh;
        }
        RuleSet rules = RuleSet.named(film.rules()).orElseGet(RuleSet::fiba);
        for (StoredPossession possession : possessions) {
            double from = possession.possession().fromSeconds();
            double to = possession.possession().toSeconds();
            PossessionFindings whole =
                    whole(possession, findings, Replay.of(places, possession.possession(), from, to));
            fresh.put(possession.possession().number(), markup(Diagrams.ofPossession(rules, whole, names.labels())));
        }
        kept.draw(film.id(), fresh);
        return fresh;
    }

    /** The diagram of one finding. */
    Optional<String> ofFinding(StoredFilm film, StoredPossession possession, StoredFinding found, Names names) {
        try {
            Finding finding = found.finding();
            List<Trail> trails = Replay.of(
                    FilmFolder.tracks(film),
                    possession.possession(),
                    finding.fromSeconds() - 2,
                    finding.toSeconds() + 2);
            PossessionFindings whole = whole(possession, List.of(found), trails);
            RuleSet rules = RuleSet.named(film.rules()).orElseGet(RuleSet::fiba);
            return Optional.of(markup(Diagrams.ofFinding(rules, whole, finding, names.labels())));
        } catch (MendableException e) {
            return Optional.empty();
        }
    }

    private static PossessionFindings whole(
            StoredPossession possession, List<StoredFinding> findings, List<Trail> trails) {
        return new PossessionFindings(
                possession.possession(),
                findings.stream()
                        .filter(f -> f.possession() == possession.possession().number())
                        .map(StoredFinding::finding)
                        .toList(),
                possession.spacing(),
                trails,
                possession.notSeen());
    }

    private static String markup(Diagram diagram) {
        StringBuilder markup = new StringBuilder("<div class=\"diagrams\">");
        for (DiagramPanel panel : diagram.panels()) {
            markup.append("<figure>").append(withoutStyles(panel.svg()));
            if (!panel.steps().isEmpty()) {
                markup.append("<figcaption><ol start=\"")
                        .append(panel.firstNumber())
                        .append("\">");
                panel.steps()
                        .forEach(step -> markup.append("<li>")
                                .append(floorgauge.app.drawing.Svg.escape(step))
                                .append("</li>"));
                markup.append("</ol></figcaption>");
            }
            markup.append("</figure>");
        }
        return markup.append("</div>\n").toString();
    }

    static String withoutStyles(String svg) {
        return STYLE.matcher(svg).replaceAll(m -> {
            StringBuilder attributes = new StringBuilder();
            for (String property : m.group(1).split(";", -1)) {
                int colon = property.indexOf(':');
                if (colon > 0) {
                    attributes
                            .append(' ')
                            .append(property.substring(0, colon).strip())
                            .append("=\"")
                            .append(property.substring(colon + 1).strip())
                            .append('"');
                }
            }
            return Matcher.quoteReplacement(attributes.toString());
        });
    }
}
