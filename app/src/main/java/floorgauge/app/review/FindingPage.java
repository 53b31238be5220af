package floorgauge.app.review;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.drawing.Svg;
import floorgauge.app.sheet.FigureTable;
import floorgauge.app.sheet.Html;
import floorgauge.app.sheet.NotSeenList;
import floorgauge.app.sheet.Phrases;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.StoredPossession;
import floorgauge.app.store.StoredTrack;
import floorgauge.app.store.Subject;
import floorgauge.app.store.Verdict;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** One finding with its evidence, its parts and its verdict. */
final class FindingPage {

    private static final int SPARE_ROLES = 1;

    private final StoredFilm film;
    private final Names names;
    private final List<StoredTrack> tracks;

    FindingPage(StoredFilm film, Names names, List<StoredTrack> tracks) {
        this.film = film;
        this.names = names;
        this.tracks = tracks;
    }

    /**
     * A finding.
     *
     * @param all the film's findings, for the ones before and after in the order of cost
     * @param diagram its drawing; empty where it cannot be made
     * @param playable whether the film can be shown
     */
    String write(
            StoredFinding found,
            StoredPossession possession,
            List<StoredFinding> all,
            Optional<Subject> judged,
            Optional<String> diagram,
            boolean playable) {
        Finding finding = found.finding();
        Html html = Frame.open(Phrases.title(finding), "finding.js", "");
        html.open(
                "div",
                "id=\"finding\" data-finding=\"" + found.id() + "\" data-film=\"" + film.id() + "\" data-from=\""
                        + finding.fromSeconds() + "\" data-to=\"" + finding.toSeconds() + "\"");
        head(html, found, possession, all);
        stage(html, playable);
        html.open("section", "class=\"verdicts\" aria-label=\"Verdict\"");
        FindingLines.verdict(html, found.number(), judged);
        corrections(
                html,
                judged.flatMap(Subject::verdict),
                finding.kind(),
                finding.label(),
                finding.fromSeconds(),
                finding.toSeconds(),
                finding.roles());
        html.close("section").close("div");
        html.open("div", "class=\"evidence\"");
        html.open("section", "class=\"measured\" aria-label=\"Measured\"");
        FigureTable.write(html, finding.figures());
        NotSeenList.write(html, finding.notSeen(), "Not seen");
        html.close("section");
        diagram.ifPresent(d -> html.open("section", "class=\"on-paper\" aria-label=\"On paper\"")
                .markup(d)
                .close("section"));
        html.close("div").close("div");
        return Frame.close(html);
    }

    /** Something entered by hand, or kept without a finding. */
    String write(Subject subject) {
        Html html = Frame.open("Kept: " + subject.kind().words(), "finding.js", "");
        html.open("div", "id=\"finding\" data-subject=\"" + subject.id() + "\" data-film=\"" + film.id() + "\"");
        html.open("header");
        html.element("p", "class=\"kicker\"", film.title() + (film.simulated() ? " · simulated" : ""));
        html.element("h1", "class=\"sentence\"", names.in(subject.sentence()));
        html.element(
                "p",
                "class=\"aside\"",
                FigureText.time(subject.fromSeconds()) + " to " + FigureText.time(subject.toSeconds())
                        + (subject.byHand()
                                ? " · entered by hand"
                                : " · matched by nothing since it was measured anew"));
        back(html);
        html.close("header");
        html.open("section", "class=\"verdicts\" aria-label=\"Verdict\"");
        FindingLines.verdict(html, 0, Optional.of(subject));
        corrections(
                html,
                subject.verdict(),
                subject.kind(),
                subject.label(),
                subject.fromSeconds(),
                subject.toSeconds(),
                subject.roles());
        html.close("section").close("div");
        return Frame.close(html);
    }

    /** The form for something that the program missed. */
    String writeEmpty() {
        Html html = Frame.open("Entered by hand", "finding.js", "");
        html.open("div", "id=\"finding\" data-by-hand=\"1\" data-film=\"" + film.id() + "\"");
        html.open("header");
        html.element("p", "class=\"kicker\"", film.title() + (film.simulated() ? " · simulated" : ""));
        html.element("h1", "Something that was missed");
        html.element(
                "p",
                "class=\"lede\"",
                "Say what it was, from when to when on the film's own clock, and who did what. It becomes a label.");
        back(html);
        html.close("header").open("section", "class=\"verdicts\"");
        corrections(
                html, Optional.empty(), FindingKind.WEAK_SCREEN, "", 0, Math.min(2, film.durationSeconds()), List.of());
        html.close("section").close("div");
        return Frame.close(html);
    }

    private void back(Html html) {
        html.open("p", "class=\"ways\"").open("a", "id=\"back\" href=\"/practice/" + film.id() + "\"");
        html.text("Back to the sheet").close("a").close("p");
    }

    private void head(Html html, StoredFinding found, StoredPossession possession, List<StoredFinding> all) {
        Finding finding = found.finding();
        html.open("header");
        html.element(
                "p",
                "class=\"kicker\"",
                film.title() + (film.simulated() ? " · simulated" : "") + " · possession "
                        + possession.possession().number() + " · finding " + found.number());
        html.element("h1", "class=\"sentence\"", names.in(finding.sentence()));
        html.element(
                "p",
                "class=\"aside\"",
                Phrases.title(finding) + " · " + FindingLines.aside(finding) + " · " + Words.roles(finding, names));
        html.open("p", "class=\"ways\"");
        html.open("a", "id=\"back\" href=\"/practice/" + film.id() + "#finding-" + found.number() + "\"")
                .text("Back to the sheet")
                .close("a")
                .text(" ");
        List<StoredFinding> order = finding.kind().isFlag()
                ? Words.byCost(all)
                : all.stream().filter(f -> !f.finding().kind().isFlag()).toList();
        int place = order.stream().map(StoredFinding::id).toList().indexOf(found.id());
        if (place > 0) {
            neighbour(html, "before", "The one before", order.get(place - 1));
        }
        if (place >= 0 && place + 1 < order.size()) {
            neighbour(html, "after", "The next one", order.get(place + 1));
        }
        html.close("p").close("header");
    }

    private static void neighbour(Html html, String id, String words, StoredFinding found) {
        html.open("a", "id=\"" + id + "\" href=\"/finding/" + found.id() + "\"")
                .text(words)
                .close("a")
                .text(" ");
    }

    private void stage(Html html, boolean playable) {
        html.open("div", "class=\"stage" + (playable ? " with-film" : "") + "\"");
        if (playable) {
            html.open("figure", "class=\"film\"").open("div", "class=\"film-frame\"");
            html.markup("<video id=\"film\" muted playsinline preload=\"auto\" tabindex=\"-1\"></video>");
            html.markup("<canvas id=\"over-film\" aria-hidden=\"true\"></canvas>");
            html.close("div").element("figcaption", "The film, with what was measured drawn in.");
            html.close("figure");
        } else if (!film.simulated()) {
            html.element(
                    "p",
                    "class=\"not-seen\"",
                    film.film().isPresent()
                            ? "This film cannot be played in a browser as it is; a copy that can is being made, look again"
                                    + " in a while."
                            : "The film itself was not found beside the results; start the page with --films and its"
                                    + " folder.");
        }
        html.open("figure", "class=\"plan-figure\"");
        html.markup("<svg id=\"plan\" class=\"plan\" role=\"img\" aria-label=\"The floor from above\"></svg>");
        html.open("figcaption", "id=\"plan-words\"").text("The floor from above at the same instant.");
        html.close("figcaption").close("figure");
        html.open("div", "class=\"rule-box\"");
        html.markup("<svg id=\"rule\" class=\"time-rule\"></svg>");
        html.open("p", "class=\"transport\"");
        button(html, "play", "Play");
        button(html, "earlier", "A frame earlier");
        button(html, "later", "A frame later");
        button(html, "slower", "Speed: whole");
        button(html, "loop", "Loop: off");
        button(html, "to-moment", "To the decisive moment");
        if (playable) {
            button(html, "clip", "Cut a clip");
        }
        html.element("span", "id=\"now\" class=\"figure\"", "");
        html.close("p").close("div");
    }

    private static void button(Html html, String id, String words) {
        html.element("button", "type=\"button\" id=\"" + id + "\"", words);
    }

    private void corrections(
            Html html,
            Optional<Verdict> given,
            FindingKind kind,
            String label,
            double from,
            double to,
            List<RoleHolder> roles) {
        html.open("form", "id=\"correct\" autocomplete=\"off\"");
        html.element("h2", "Correct it");
        html.open("p", "class=\"field\"").element("label", "for=\"from\"", "From, seconds");
        number(html, "from", given.map(Verdict::fromSeconds).orElse(from));
        html.element("label", "for=\"to\"", "to");
        number(html, "to", given.map(Verdict::toSeconds).orElse(to));
        html.close("p");
        html.open("p", "class=\"field\"").element("label", "for=\"kind\"", "Kind");
        html.open("select", "id=\"kind\"");
        FindingKind chosen = given.map(Verdict::kind).orElse(kind);
        for (FindingKind each : FindingKind.values()) {
            option(html, each.name(), each.words(), each == chosen);
        }
        html.close("select");
        html.element("label", "for=\"label\"", "in words");
        html.open(
                "input",
                "id=\"label\" maxlength=\"60\" value=\""
                        + Svg.escape(given.map(Verdict::label).orElse(label)) + "\"");
        html.close("p");
        html.open("fieldset", "class=\"roles\"").element("legend", "Who did what");
        List<RoleHolder> held = given.map(Verdict::roles).orElse(roles);
        for (int i = 0; i < held.size() + SPARE_ROLES; i++) {
            role(html, i, i < held.size() ? Optional.of(held.get(i)) : Optional.empty());
        }
        html.close("fieldset");
        html.open("fieldset", "class=\"grade\"").element("legend", "Grade, 1 (poor) to 5 (excellent)");
        for (int grade = 0; grade <= 5; grade++) {
            int value = grade;
            boolean checked = given.map(v -> v.grade().orElse(0) == value).orElse(value == 0);
            html.open("label")
                    .markup("<input type=\"radio\" name=\"grade\" value=\"" + grade + "\"" + (checked ? " checked" : "")
                            + "> ");
            html.text(grade == 0 ? "none" : String.valueOf(grade)).close("label");
        }
        html.close("fieldset");
        html.open("p", "class=\"field\"").element("label", "for=\"note\"", "Note");
        html.open("textarea", "id=\"note\" rows=\"2\" maxlength=\"" + Verdict.LONGEST_NOTE + "\"")
                .text(given.map(Verdict::note).orElse(""));
        html.markup("</textarea>").close("p");
        html.open("p", "class=\"field\"");
        html.element("button", "type=\"submit\" id=\"save\"", "Keep as right, with this");
        html.element("button", "type=\"button\" id=\"take-back\"", "Take the last verdict back");
        html.element("button", "type=\"button\" id=\"give-back\"", "Give it back");
        html.close("p").close("form");
    }

    private static void number(Html html, String id, double value) {
        html.markup("<input id=\"" + id + "\" type=\"number\" step=\"0.01\" value=\""
                + String.format(Locale.ROOT, "%.2f", value) + "\" required>\n");
    }

    private static void option(Html html, String value, String words, boolean chosen) {
        html.open("option", "value=\"" + Svg.escape(value) + "\"" + (chosen ? " selected" : ""))
                .text(words)
                .close("option");
    }

    private void role(Html html, int number, Optional<RoleHolder> held) {
        html.open("p", "class=\"field role\"");
        html.open("select", "class=\"role-word\" aria-label=\"Role " + (number + 1) + "\"");
        option(html, "", "no one", held.isEmpty());
        for (Role role : Role.values()) {
            option(
                    html,
                    role.words(),
                    role.words(),
                    held.filter(h -> h.role() == role).isPresent());
        }
        html.close("select");
        html.open("select", "class=\"role-track\" aria-label=\"Player in role " + (number + 1) + "\"");
        for (StoredTrack track : tracks) {
            option(
                    html,
                    String.valueOf(track.trackId()),
                    names.of(track.trackId()),
                    held.filter(h -> h.trackId() == track.trackId()).isPresent());
        }
        html.close("select").close("p");
    }
}
