package floorgauge.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The file is read by the grammar of W3C's "WebVTT: The Web Video Text Tracks Format", section 4: signature, blank line, cues of a timing
 * line and text, ends after starts, chapter titles of one line, and of any two cues either one inside the other or both apart.
 */
class ChaptersTest {

    private static final Pattern TIMING = Pattern.compile(
            "(\\d{2,}):([0-5]\\d):([0-5]\\d)\\.(\\d{3}) --> " + "(\\d{2,}):([0-5]\\d):([0-5]\\d)\\.(\\d{3})");

    @TempDir
    private Path folder;

    private record Cue(long from, long to, String title) {}

    @Test
    void nothingChosenLeavesThePossessions() throws IOException {
        MeasuredFolder film = MeasuredFolder.at(List.of(ExportedFilms.results(folder, "film")))
                .get(0);
        ExportOrder order = new ExportOrder(
                List.of(FilmChoice.of(film, (f, finding) -> false)), new Cut.Room(0, 0), new FilmSearch(List.of()));
        new Chapters().write(order, ExportFolder.open(folder.resolve("out")));
        assertThat(cues()).singleElement().satisfies(c -> {
            assertThat(c.title()).isEqualTo("Possession 1, ends with: end of film");
            assertThat(c.from()).isEqualTo(40);
            assertThat(c.to()).isEqualTo(5960);
        });
    }

    @Test
    void findingsStandInsideTheirPossession() throws IOException {
        new Chapters()
                .write(
                        ExportedFilms.everything(ExportedFilms.results(folder, "film")),
                        ExportFolder.open(folder.resolve("out")));
        List<Cue> cues = cues();
        assertThat(cues).hasSize(3);
        assertThat(cues.get(1).title()).startsWith("1 weak screen: #2").contains("0.42 ± 0.08 m");
        for (Cue one : cues) {
            assertThat(one.to()).isGreaterThan(one.from());
            for (Cue other : cues) {
                if (one != other) {
                    boolean apart = one.to() <= other.from() || other.to() <= one.from();
                    boolean inside = one.from() >= other.from() && one.to() <= other.to();
                    boolean around = other.from() >= one.from() && other.to() <= one.to();
                    assertThat(apart || inside != around)
                            .as(one + " and " + other)
                            .isTrue();
                }
            }
        }
    }

    private List<Cue> cues() throws IOException {
        String text = Files.readString(folder.resolve("out/film.chapters.vtt"));
        String[] blocks = text.split("\n\n+");
        assertThat(blocks[0]).isEqualTo("WEBVTT");
        List<Cue> cues = new ArrayList<>();
        for (int i = 1; i < blocks.length; i++) {
            String[] lines = blocks[i].strip().split("\n");
            assertThat(lines).hasSize(2);
            Matcher timing = TIMING.matcher(lines[0]);
            assertThat(timing.matches()).as(lines[0]).isTrue();
            assertThat(lines[1]).doesNotContain("-->").doesNotContain("<").doesNotContainPattern("&(?!amp;|lt;|gt;)");
            cues.add(new Cue(milliseconds(timing, 1), milliseconds(timing, 5), lines[1]));
        }
        return cues;
    }

    private static long milliseconds(Matcher timing, int group) {
        long seconds = (Long.parseLong(timing.group(group)) * 60 + Long.parseLong(timing.group(group + 1))) * 60
                + Long.parseLong(timing.group(group + 2));
        return seconds * 1000 + Long.parseLong(timing.group(group + 3));
    }
}
