package floorgauge.app.export;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * A CMX 3600 edit decision list: the findings as cuts one after the other on one video track, record time from one hour
 * (common practice). Fields stand in the columns that readers expect: event 1 to 3, reel 6 to 13, track 15, transition 21,
 * the four timecodes from 30, 42, 54 and 66. A list holds at most 999 events; more go into further files.
 */
final class CutList implements Exporter {

    private static final int MOST_EVENTS = 999;
    private static final int REEL_CHARACTERS = 8;
    private static final int RECORD_HOURS = 1;
    private static final int MOST_COMMENT = 120;

    @Override
    public void write(ExportOrder order, ExportFolder folder) {
        // One list has one way of counting: that of the first film.
        Timecode timecode = order.films().isEmpty()
                ? Timecode.of(new FrameRate(25, 1))
                : Timecode.of(order.films().get(0).film().frameRate());
        List<String> events = new ArrayList<>();
        long record = timecode.framesInHours(RECORD_HOURS);
        Set<String> reels = new HashSet<>();
        for (FilmChoice film : order.films()) {
            String reel = reel(film.film().name(), reels);
            for (ChosenFinding finding : film.findings()) {
                Cut cut = order.cut(film, finding);
                long from = timecode.frameAt(cut.fromSeconds());
                long length = Math.max(1, timecode.frameAt(cut.toSeconds()) - from);
                int number = events.size() % MOST_EVENTS + 1;
                if (number == 1) {
                    record = timecode.framesInHours(RECORD_HOURS);
                }
                events.add(event(number, reel, timecode, from, length, record) + comments(film, finding));
                record += length;
            }
        }
        int files = Math.max(1, (events.size() + MOST_EVENTS - 1) / MOST_EVENTS);
        for (int i = 0; i < files; i++) {
            List<String> part = events.subList(i * MOST_EVENTS, Math.min(events.size(), (i + 1) * MOST_EVENTS));
            String title = files == 1 ? "FINDINGS" : "FINDINGS " + (i + 1) + " OF " + files;
            String text = "TITLE: " + title + "\r\nFCM: " + (timecode.dropsNumbers() ? "DROP FRAME" : "NON-DROP FRAME")
                    + "\r\n" + String.join("", part);
            String name = files == 1 ? "findings.edl" : "findings-" + (i + 1) + ".edl";
            folder.write(name, file -> text(file, text));
        }
    }

    private static void text(Path file, String text) throws IOException {
        Files.writeString(file, text, StandardCharsets.US_ASCII);
    }

    private static String event(int number, String reel, Timecode timecode, long from, long length, long record) {
        return String.format(
                Locale.ROOT,
                "%03d  %-8s V     C        %s %s %s %s\r\n",
                number,
                reel,
                timecode.text(from),
                timecode.text(from + length),
                timecode.text(record),
                timecode.text(record + length));
    }

    private static String comments(FilmChoice film, ChosenFinding finding) {
        String clip = PlainText.ascii(film.film().findings().film().name());
        String sentence = PlainText.ascii(finding.finding().sentence());
        String cut = sentence.length() > MOST_COMMENT ? sentence.substring(0, MOST_COMMENT - 3) + "..." : sentence;
        return "* FROM CLIP NAME:  " + clip + "\r\n* COMMENT: FINDING " + finding.number() + ": " + cut + "\r\n";
    }

    /** Eight capitals and digits, another for every film. */
    private static String reel(String name, Set<String> taken) {
        String letters = PlainText.ascii(name).toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
        String base = letters.isEmpty() ? "FILM" : letters;
        String reel = base.substring(0, Math.min(REEL_CHARACTERS, base.length()));
        for (int i = 2; !taken.add(reel); i++) {
            String digits = Integer.toString(i);
            reel = base.substring(0, Math.min(REEL_CHARACTERS - digits.length(), base.length())) + digits;
        }
        return reel;
    }
}
