package floorgauge.app.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.abort;

import floorgauge.app.InventedFilm;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.court.failure.MendableException;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Unit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pages are left in the build folder to be looked at. */
class WallPagesTest {

    private static final Path FOLDER = Path.of("target", "wall-test");

    @TempDir
    private Path folder;

    @Test
    void aPracticeWithoutFilmIsAPageToo() {
        assertThat(PracticePage.of("Monday", List.of(), PlayerNames.none()))
                .contains("0 films, 0 possessions. No standard was missed");
        assertThat(PlayerPage.of(List.of(), PlayerNames.none())).isEmpty();
    }

    @Test
    void thePracticeCountsItsMissedStandardsAndDrawsTheCostliest() throws IOException {
        String page = PracticePage.of("Monday <b>", films(), PlayerNames.none());
        write("practice.html", page);
        assertThat(page)
                .contains("Monday &lt;b&gt;")
                .contains("1 film, 1 possession. 2 standards missed.")
                .contains("<th scope=\"row\">weak screen</th>")
                .contains("1 of 1");
        assertThat(page.indexOf("left a gap of")).isLessThan(page.indexOf("stood 1.62"));
        standsAlone(page);
    }

    @Test
    void everyAttackerWithARoleHasAPage() throws IOException {
        Map<String, String> pages = PlayerPage.of(films(), PlayerNames.none());
        assertThat(pages.keySet()).containsExactly("#1", "#2", "#3");
        assertThat(pages.get("#2"))
                .contains("A role in 1 finding. One standard missed.")
                .contains("screener");
        for (String page : pages.values()) {
            standsAlone(page);
        }
    }

    @Test
    void namesTakeThePlaceOfNumbersWhereTheyAreKnown() throws IOException {
        PlayerNames names = (film, track) -> track == 2 ? Optional.of("9 Dane <Okoro>") : Optional.empty();
        Map<String, String> pages = PlayerPage.of(films(), names);
        assertThat(pages.keySet()).containsExactly("#1", "#3", "9 Dane <Okoro>");
        write("player.html", pages.get("9 Dane <Okoro>"));
        assertThat(pages.get("9 Dane <Okoro>"))
                .contains("9 Dane &lt;Okoro&gt;&#39;s down screen for #1")
                .containsPattern("class=\"player-number[^>]*>9<")
                .containsPattern("class=\"player-number[^>]*>#1<")
                .doesNotContainPattern("class=\"player-number[^>]*>2<");
        assertThat(names.markOf("", 3)).isEmpty();
        PlayerNames unnumbered = (film, track) -> Optional.of("Dane Okoro junior");
        assertThat(unnumbered.markOf("", 3)).contains("DO");
    }

    /** The standard error of a mean of two: sqrt(0.3^2 + 0.4^2) / 2 = 0.25. */
    @Test
    void meansCarryTheirError() {
        Figure mean =
                Means.of(List.of(Figure.of("gap", 1.0, 0.3, Unit.METRES), Figure.of("gap", 2.0, 0.4, Unit.METRES)));
        assertThat(mean.value()).isEqualTo(1.5);
        assertThat(mean.standardError().getAsDouble()).isEqualTo(0.25);
        assertThat(Means.of(List.of(Figure.plain("share", 0.5, Unit.SHARE))).standardError())
                .isEmpty();
    }

    @Test
    void aBrowserThatIsNotThereIsSaidInOneLine() {
        assertThatThrownBy(() -> PdfPrinter.with(Optional.of(folder.resolve("none"))))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("none");
    }

    /** A machine without the browser can't print; the check installs it. */
    private static PdfPrinter printerOfThisMachine() {
        try {
            return PdfPrinter.with(Optional.empty());
        } catch (MendableException e) {
            return abort("skipped: " + e.getMessage());
        }
    }

    /** Each page must fit one sheet of paper: the browser's own page count says so. */
    @Test
    void thePagesPrintOnOneSheetEach() throws IOException {
        PdfPrinter printer = printerOfThisMachine();
        Path practice = write("practice.html", PracticePage.of("Monday", films(), PlayerNames.none()));
        Path player = write(
                "player-1.html", PlayerPage.of(films(), PlayerNames.none()).get("#1"));
        for (Path page : List.of(practice, player)) {
            Path pdf = folder.resolve(page.getFileName() + ".pdf");
            printer.print(page, pdf);
            String text = Files.readString(pdf, StandardCharsets.ISO_8859_1);
            assertThat(text).startsWith("%PDF-1.");
            Matcher count = Pattern.compile("/Type\\s*/Pages.*?/Count (\\d+)", Pattern.DOTALL)
                    .matcher(text);
            assertThat(count.find()).isTrue();
            assertThat(count.group(1)).as(page.toString()).isEqualTo("1");
            Files.copy(pdf, FOLDER.resolve(pdf.getFileName()), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static void standsAlone(String page) {
        assertThat(page).startsWith("<!DOCTYPE html>").doesNotContain("<script").doesNotContain("<link");
        assertThat(page).doesNotContainPattern("(?:href|src)=\"(?!#)");
    }

    private static Path write(String name, String page) throws IOException {
        Files.createDirectories(FOLDER);
        return Files.writeString(FOLDER.resolve(name), page);
    }

    private static List<WallFilm> films() {
        MeasuredFilm measured = InventedFilm.measured();
        return List.of(new WallFilm(
                measured.film(), measured.court().rules(), measured.findings().possessions()));
    }
}
