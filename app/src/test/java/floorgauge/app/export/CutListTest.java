package floorgauge.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The list is held against the fields of CMX 3600 as published lists have them (the sample lists of the OpenTimelineIO project): event
 * in columns 1 to 3, reel in 6 to 13, track in 15, transition in 21, timecodes from 30, 42, 54 and 66.
 */
class CutListTest {

    private static final Pattern EVENT = Pattern.compile(
            "(\\d{3}) {2}([A-Z0-9]{1,8} *) V {5}C {8}(\\d\\d:\\d\\d:\\d\\d:\\d\\d) (\\d\\d:\\d\\d:\\d\\d:\\d\\d)"
                    + " (\\d\\d:\\d\\d:\\d\\d:\\d\\d) (\\d\\d:\\d\\d:\\d\\d:\\d\\d)");

    @TempDir
    private Path folder;

    @Test
    void noFindingIsAnEmptyList() throws IOException {
        ExportOrder none = new ExportOrder(List.of(), new Cut.Room(0, 0), new FilmSearch(List.of()));
        ExportFolder out = ExportFolder.open(folder.resolve("out"));
        new CutList().write(none, out);
        assertThat(lines("findings.edl")).containsExactly("TITLE: FINDINGS", "FCM: NON-DROP FRAME");
    }

    @Test
    void everyFieldStandsInItsColumns() throws IOException {
        new CutList()
                .write(
                        ExportedFilms.everything(
                                ExportedFilms.results(folder, "harbour lights practice 3"),
                                ExportedFilms.results(folder, "harbour lights practice 4")),
                        ExportFolder.open(folder.resolve("out")));
        List<String> events = lines("findings.edl").stream()
                .filter(l -> l.matches("\\d{3} .*"))
                .toList();
        assertThat(events).hasSize(4);
        for (String event : events) {
            assertThat(event).hasSize(76).matches(EVENT);
            assertThat(event.charAt(14)).isEqualTo('V');
            assertThat(event.charAt(20)).isEqualTo('C');
            assertThat(event.substring(29, 31)).isEqualTo("00");
            assertThat(event.substring(53, 55)).isEqualTo("01");
        }
        assertThat(events.stream().map(e -> e.substring(5, 13).strip()))
                .containsExactly("HARBOURL", "HARBOURL", "HARBOUR2", "HARBOUR2");
    }

    @Test
    void recordTimesRunOnFromOneHourAndLastAsLongAsTheSource() throws IOException {
        new CutList()
                .write(
                        ExportedFilms.everything(
                                ExportedFilms.results(folder, "a"), ExportedFilms.results(folder, "b")),
                        ExportFolder.open(folder.resolve("out")));
        long record = 3600 * 25;
        List<long[]> sources = new ArrayList<>();
        int number = 1;
        for (String line : lines("findings.edl")) {
            Matcher event = EVENT.matcher(line);
            if (event.matches()) {
                assertThat(Integer.parseInt(event.group(1))).isEqualTo(number++);
                long in = frames(event.group(3));
                long out = frames(event.group(4));
                assertThat(frames(event.group(5))).isEqualTo(record);
                record += out - in;
                assertThat(frames(event.group(6))).isEqualTo(record);
                sources.add(new long[] {in, out});
            }
        }
        // The weak screen runs from 1.6 to 4.2 s, the crowded floor from 4.4 to 5.9 s of 6 s; two seconds of room.
        assertThat(sources.get(0)).containsExactly(0, 150);
        assertThat(sources.get(1)).containsExactly(60, 150);
    }

    @Test
    void commentsAreAsciiAndNameTheClip() throws IOException {
        Path results = ExportedFilms.results(folder, "h", "Übung \u00e9 3.mp4", "0".repeat(64));
        new CutList().write(ExportedFilms.everything(results), ExportFolder.open(folder.resolve("out")));
        String text = Files.readString(folder.resolve("out/findings.edl"), StandardCharsets.US_ASCII);
        assertThat(text.chars()).allMatch(c -> c == '\r' || c == '\n' || c >= 32 && c < 127);
        assertThat(text).contains("* FROM CLIP NAME:  Ubung e 3.mp4\r\n").contains("0.42 +/- 0.08 m");
    }

    private static long frames(String timecode) {
        String[] parts = timecode.split(":");
        return ((Long.parseLong(parts[0]) * 60 + Long.parseLong(parts[1])) * 60 + Long.parseLong(parts[2])) * 25
                + Long.parseLong(parts[3]);
    }

    private List<String> lines(String name) throws IOException {
        return Files.readAllLines(folder.resolve("out").resolve(name), StandardCharsets.US_ASCII);
    }
}
