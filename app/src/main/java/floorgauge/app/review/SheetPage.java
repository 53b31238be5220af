package floorgauge.app.review;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.result.Cautions;
import floorgauge.app.sheet.Html;
import floorgauge.app.sheet.Legend;
import floorgauge.app.sheet.NotSeenList;
import floorgauge.app.sheet.Phrases;
import floorgauge.app.store.Notes;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.StoredPossession;
import floorgauge.app.store.Subject;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.Possession;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The morning sheet of a practice, read from top to bottom. */
final class SheetPage {

    private static final int FIGURES = 4;

    private final StoredFilm film;
    private final List<StoredPossession> possessions;
    private final List<StoredFinding> findings;
    private final List<Subject> judged;
    private final Map<String, Subject> byFinding;
    private final Names names;
    private final Map<Integer, String> drawings;
    private final List<NotSeen> notSeen;
    private final String season;
    private final String note;

    /** @param season a line on what is still being made; may be blank; {@code note} as the analyst wrote it, may be blank */
    SheetPage(
            StoredFilm film,
            List<StoredPossession> possessions,
            List<StoredFinding> findings,
            List<Subject> judged,
            Names names,
            Map<Integer, String> drawings,
            List<NotSeen> notSeen,
            String season,
            String note) {
        this.film = film;
        this.possessions = possessions;
        this.findings = findings;
        this.judged = judged;
        this.byFinding = judged.stream()
                .filter(s -> s.findingId().isPresent())
                .collect(Collectors.toMap(s -> s.findingId().orElseThrow(), Function.identity(), (a, b) -> a));
        this.names = names;
        this.drawings = drawings;
        this.notSeen = notSeen;
        this.season = season;
        this.note = note;
    }

    String write() {
        Html html = Frame.open(film.title(), "sheet.js", "Morning sheet");
        html.open("div", "id=\"sheet\" data-film=\"" + film.id() + "\"");
        head(html);
        first(html);
        possessions.forEach(p -> possession(html, p));
        kept(html);
        NotSeenList.write(html, notSeen, "Not seen on this film");
        foot(html);
        html.close("div");
        return Frame.close(html);
    }

    private void head(Html html) {
        html.open("header");
        html.element("p", "class=\"kicker\"", Words.day(film) + (film.simulated() ? " · simulated" : ""));
        html.element("h1", film.title());
        html.element("p", "class=\"lede\"", summary());
        if (film.simulated()) {
            html.element(
                    "p",
                    "class=\"aside\"",
                    "This practice was played by the program for trying things out; its players are invented.");
        }
        if (!season.isBlank()) {
            html.element("p", "class=\"aside\"", season);
        }
        html.open("p", "class=\"ways\"");
        link(html, "/practice/" + film.id() + "/players", "Who is who");
        link(html, "/practice/" + film.id() + "/by-hand", "Enter something that was missed");
        link(html, "/practice/" + film.id() + "/labels.json", "Take the label file along");
        html.close("p");
        html.open("p", "class=\"field practice-note\"")
                .element("label", "for=\"practice-note\"", "Note on this practice");
        html.open("textarea", "id=\"practice-note\" rows=\"2\" maxlength=\"" + Notes.LONGEST + "\"")
                .text(note)
                .markup("</textarea>");
        html.close("p").close("header");
    }

    private static void link(Html html, String address, String text) {
        html.open("a", "href=\"" + address + "\"").text(text).close("a").text(" ");
    }

    private String summary() {
        List<StoredFinding> flags = Words.byCost(findings);
        long open = flags.stream().filter(f -> !byFinding.containsKey(f.id())).count();
        String play = Phrases.counted(possessions.size(), "possession") + ". ";
        if (flags.isEmpty()) {
            return play + "No standard was missed in what could be seen.";
        }
        String kinds =
                Phrases.countedKinds(flags.stream().map(f -> f.finding().kind()).toList());
        return play + Phrases.counted(flags.size(), "standard") + " missed: " + kinds + ". "
                + (open == 0 ? "All of them are judged." : open + " of them not judged yet.");
    }

    /** The costliest and surest, as links into the sheet. */
    private void first(Html html) {
        List<StoredFinding> flags = Words.byCost(findings);
        if (flags.isEmpty()) {
            return;
        }
        html.open("section", "class=\"first\"").element("h2", "Look at these first");
        html.element("p", "class=\"aside\"", "In the order of what they cost and how sure they are.");
        html.open("ol");
        for (StoredFinding flag : flags) {
            html.open("li", "data-listed=\"" + flag.id() + "\"");
            html.open("a", "href=\"#finding-" + flag.number() + "\"")
                    .text(names.in(flag.finding().sentence()))
                    .close("a");
            html.element(
                    "span",
                    "class=\"aside\"",
                    " "
                            + Phrases.joined(
                                    ", ",
                                    "finding " + flag.number(),
                                    "possession " + flag.possession(),
                                    Phrases.sureness(flag.finding()))
                            + "; ");
            html.element("span", "class=\"aside state\"", Words.verdict(Optional.ofNullable(byFinding.get(flag.id()))));
            html.close("li");
        }
        html.close("ol").close("section");
    }

    private void possession(Html html, StoredPossession stored) {
        Possession possession = stored.possession();
        html.open("section", "class=\"possession\" id=\"possession-" + possession.number() + "\"");
        Phrases.heading(html, possession);
        html.element("p", Phrases.describe(possession, names::of));
        html.open("div", "class=\"on-paper\"");
        html.markup(drawings.getOrDefault(
                possession.number(), "<p class=\"not-drawn\">The tracks of this possession cannot be read.</p>"));
        html.open("div", "class=\"said\"");
        List<StoredFinding> here = findings.stream()
                .filter(f -> f.possession() == possession.number())
                .toList();
        here.stream()
                .filter(f -> f.finding().kind().isFlag())
                .forEach(f -> FindingLines.write(html, f, Optional.ofNullable(byFinding.get(f.id())), names, FIGURES));
        events(html, here);
        NotSeenList.write(html, stored.notSeen(), "Not seen in this possession");
        html.close("div").close("div").close("section");
    }

    private void events(Html html, List<StoredFinding> here) {
        List<StoredFinding> events =
                here.stream().filter(f -> !f.finding().kind().isFlag()).toList();
        if (here.size() == events.size()) {
            html.element("p", "class=\"aside\"", "No standard was missed in what could be seen.");
        }
        if (events.isEmpty()) {
            return;
        }
        html.open("details", "class=\"events\"")
                .element("summary", "Also measured: " + Phrases.counted(events.size(), "event"));
        html.open("ol");
        for (StoredFinding event : events) {
            html.open("li").open("a", "href=\"/finding/" + event.id() + "\"");
            html.text(names.in(event.finding().sentence())).close("a");
            html.element(
                    "span",
                    "class=\"aside\"",
                    " " + FigureText.time(event.finding().fromSeconds())
                            + (byFinding.containsKey(event.id())
                                    ? "; " + Words.verdict(Optional.of(byFinding.get(event.id())))
                                    : ""));
            html.close("li");
        }
        html.close("ol").close("details");
    }

    /** Verdicts that match nothing since the film was measured anew, and what was entered by hand. */
    private void kept(Html html) {
        List<Subject> without =
                judged.stream().filter(s -> s.findingId().isEmpty()).toList();
        if (without.isEmpty()) {
            return;
        }
        html.open("section", "class=\"kept\"").element("h2", "Kept without a finding");
        html.element(
                "p",
                "class=\"aside\"",
                "Entered by hand, or judged before the film was measured anew and matched by nothing now.");
        html.open("ol");
        for (Subject subject : without) {
            html.open("li").open("a", "href=\"/kept/" + subject.id() + "\"");
            html.text(FigureText.time(subject.fromSeconds()) + " "
                    + subject.kind().words() + ": " + names.in(subject.sentence()));
            html.close("a").element("span", "class=\"aside\"", " " + Words.verdict(Optional.of(subject)));
            subject.verdict()
                    .filter(v -> !v.note().isEmpty())
                    .ifPresent(v -> html.element("span", "class=\"aside\"", "; note: " + v.note()));
            html.close("li");
        }
        html.close("ol").close("section");
    }

    private static void foot(Html html) {
        html.open("footer");
        Legend.write(html);
        html.open("section").element("h2", "Before you use these figures");
        html.open("ul");
        Cautions.TEXT.forEach(caution -> html.element("li", caution));
        html.close("ul").close("section").close("footer");
    }
}
