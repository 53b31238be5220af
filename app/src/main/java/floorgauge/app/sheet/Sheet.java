package floorgauge.app.sheet;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.drawing.PlanOfFloor;
import floorgauge.app.drawing.SpacingChart;
import floorgauge.app.result.Cautions;
import floorgauge.app.result.CourtReading;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.events.diagram.Diagram;
import floorgauge.events.diagram.DiagramPanel;
import floorgauge.events.diagram.Diagrams;
import floorgauge.events.diagram.PlayerLabels;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.PossessionFindings;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;

/** Writes {@code sheet.html}. */
public final class Sheet {

    private static final String STYLE = "/floorgauge/app/sheet/sheet.css";

    private final MeasuredFilm measured;
    private final List<List<ShownFrame>> frames;
    private final SheetThresholds thresholds;
    private final Html html = new Html();

    private Sheet(MeasuredFilm measured, List<List<ShownFrame>> frames, SheetThresholds thresholds) {
        this.measured = measured;
        this.frames = frames;
        this.thresholds = thresholds;
    }

    /**
     * Writes the page.
     *
     * @param frames the decisive frames of each finding, in the order of {@link Findings#all}; empty lists where the film's
     *     pictures are not at hand
     */
    public static void write(
            MeasuredFilm measured, List<List<ShownFrame>> frames, SheetThresholds thresholds, Path file)
            throws IOException {
        if (frames.size() != measured.findings().all().size()) {
            throw new IllegalArgumentException("frames for " + frames.size() + " findings, not for "
                    + measured.findings().all().size());
        }
        Files.writeString(file, new Sheet(measured, frames, thresholds).page(), StandardCharsets.UTF_8);
    }

    private String page() {
        html.markup("<!DOCTYPE html>\n");
        html.open("html", "lang=\"en\"").open("head");
        html.markup("<meta charset=\"utf-8\">\n");
        html.markup("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.element("title", measured.film().name() + " measured");
        html.open("style").markup(style()).close("style");
        html.close("head").open("body");
        html.markup(Hatching.DEFINITION);
        html.open("main");
        head();
        overview();
        int finding = 0;
        for (PossessionFindings possession : measured.findings().possessions()) {
            possession(possession, finding);
            finding += possession.findings().size();
        }
        notSeen();
        html.close("main");
        foot();
        html.close("body").close("html");
        return html.finish();
    }

    private void head() {
        html.open("header");
        html.element("p", "class=\"kicker\"", "Measured film");
        html.element("h1", measured.film().name());
        html.element("p", "class=\"lede\"", summary());
        html.open("dl", "class=\"facts\"");
        FilmSource film = measured.film();
        fact(
                "Film",
                (film.widthPixels() > 0
                                ? film.widthPixels() + " × " + film.heightPixels()
                                : "positions without a picture")
                        + ", " + FigureText.time(film.durationSeconds())
                        + " min, " + film.frames() + " frames");
        CourtReading court = measured.court();
        fact("Court", court.rules().name().toUpperCase(java.util.Locale.ROOT) + " rules");
        fact("Calibration", calibration(court));
        fact("Ball", ballStatement());
        html.close("dl").close("header");
    }

    private void fact(String name, String text) {
        html.open("div");
        html.element("dt", name).element("dd", text);
        html.close("div");
    }

    private static String calibration(CourtReading court) {
        return court.source().equals("none")
                ? court.reason()
                : court.status() + ", from " + court.source() + ". " + court.reason();
    }

    private String ballStatement() {
        return measured.tracks().ball().isPresent()
                ? "Tracked."
                : "Not tracked. Everything here is measured from the players alone; whoever has the ball is not told, and"
                        + " passes and shots are not measured.";
    }

    private String summary() {
        Findings findings = measured.findings();
        List<Finding> flags =
                findings.all().stream().filter(f -> f.kind().isFlag()).toList();
        String play = Phrases.counted(findings.possessions().size(), "possession") + ", "
                + Phrases.counted(measured.tracks().players().size(), "player") + " followed. ";
        if (flags.isEmpty()) {
            return play + "No standard was missed in what could be seen.";
        }
        List<FindingKind> kinds = flags.stream().map(Finding::kind).toList();
        return play + Phrases.counted(flags.size(), "standard") + " missed: " + Phrases.countedKinds(kinds) + ".";
    }

    /** The missed standards, the costliest first. */
    private void overview() {
        List<Finding> all = measured.findings().all();
        List<Integer> flags = java.util.stream.IntStream.range(0, all.size())
                .filter(i -> all.get(i).kind().isFlag())
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) ->
                                -all.get(i).severity().orElseThrow().level())
                        .thenComparing(i -> i))
                .toList();
        if (flags.isEmpty()) {
            return;
        }
        html.open("section", "class=\"overview\"").element("h2", "Standards missed, the costliest first");
        html.open("ol");
        for (int index : flags) {
            Finding finding = all.get(index);
            html.open("li").open("a", "href=\"#finding-" + (index + 1) + "\"");
            html.text(finding.sentence()).close("a");
            html.element(
                    "span",
                    "class=\"aside\"",
                    Phrases.joined(
                            ", ",
                            "finding " + (index + 1),
                            FigureText.time(finding.fromSeconds()),
                            Phrases.sureness(finding)));
            html.close("li");
        }
        html.close("ol").close("section");
    }

    private void possession(PossessionFindings measuredPossession, int firstFinding) {
        Possession possession = measuredPossession.possession();
        html.open("section", "id=\"possession-" + possession.number() + "\" class=\"possession\"");
        Phrases.heading(html, possession);
        html.element("p", Phrases.describe(possession, id -> "#" + id));
        measuredPossession.script().ifPresent(reading -> new ScriptSection(html).write(reading));
        diagram(measuredPossession);
        html.open("div", "class=\"possession-drawings\"");
        figure(
                new PlanOfFloor(measured.court().rules(), measuredPossession).ofPossession(),
                "Everyone's way, marks where each was last seen");
        String chart =
                SpacingChart.of(measuredPossession, thresholds.crowdedMetres(), thresholds.collapsedSquareMetres());
        if (!chart.isEmpty()) {
            figure(chart, "Spacing of the attackers over time; hatched while a screen, handoff or cut passes by");
        }
        html.close("div");
        FindingArticle article = new FindingArticle(
                html, new PlanOfFloor(measured.court().rules(), measuredPossession), measured.court());
        for (int i = 0; i < measuredPossession.findings().size(); i++) {
            article.write(measuredPossession.findings().get(i), firstFinding + i + 1, frames.get(firstFinding + i));
        }
        NotSeenList.write(html, measuredPossession.notSeen(), "Not seen in this possession");
        html.close("section");
    }

    /** What was done, as a coach would draw it. */
    private void diagram(PossessionFindings possession) {
        Diagram diagram = Diagrams.ofPossession(measured.court().rules(), possession, PlayerLabels.trackIds());
        html.open("div", "class=\"diagrams\"");
        for (DiagramPanel panel : diagram.panels()) {
            html.open("figure").markup(panel.svg());
            html.open("figcaption").open("ol", "start=\"" + panel.firstNumber() + "\"");
            panel.steps().forEach(step -> html.element("li", step));
            html.close("ol").close("figcaption").close("figure");
        }
        html.close("div");
    }

    private void figure(String drawing, String caption) {
        html.open("figure").markup(drawing).element("figcaption", caption).close("figure");
    }

    private void notSeen() {
        List<NotSeen> notSeen = measured.findings().notSeen();
        NotSeenList.write(html, notSeen, "Not seen on this film");
        if (measured.findings().possessions().isEmpty()) {
            html.element("p", "No possession was found, so nothing was measured.");
        }
    }

    private void foot() {
        html.open("footer");
        Legend.write(html);
        html.open("section").element("h2", "Before you use these figures");
        html.open("ul");
        Cautions.TEXT.forEach(caution -> html.element("li", caution));
        html.close("ul").close("section");
        html.close("footer");
    }

    private static String style() {
        try (InputStream in = Sheet.class.getResourceAsStream(STYLE)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + STYLE, e);
        }
    }
}
