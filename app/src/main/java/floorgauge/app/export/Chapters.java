package floorgauge.app.export;

import floorgauge.events.finding.Possession;
import floorgauge.events.finding.PossessionFindings;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * WebVTT chapters (W3C, "WebVTT: The Web Video Text Tracks Format", chapter title text, only nested cues): a chapter a possession and
 * inside it one a finding. Chapters of one level must not overlap, so a finding's chapter ends where the next begins, and
 * findings that begin together share one.
 */
final class Chapters implements Exporter {

    private static final int THOUSAND = 1000;
    private static final int SIXTY = 60;

    /**
     * A cue in whole milliseconds.
     *
     * @param from start
     * @param to end, after the start
     * @param title one line
     */
    private record Cue(long from, long to, String title) {}

    @Override
    public void write(ExportOrder order, ExportFolder folder) {
        for (FilmChoice film : order.films()) {
            String text = text(film);
            folder.write(
                    film.film().name() + ".chapters.vtt",
                    file -> Files.writeString(file, text, StandardCharsets.UTF_8));
        }
    }

    private static String text(FilmChoice film) {
        StringBuilder text = new StringBuilder("WEBVTT\n");
        long free = 0;
        for (PossessionFindings measured : film.film().findings().findings().possessions()) {
            Possession possession = measured.possession();
            List<ChosenFinding> findings = film.findings().stream()
                    .filter(f -> f.possession() == possession.number())
                    .sorted(Comparator.comparingDouble(f -> f.finding().fromSeconds()))
                    .toList();
            long from = Math.max(free, milliseconds(possession.fromSeconds()));
            long to = milliseconds(possession.toSeconds());
            if (to > from) {
                Cue whole =
                        new Cue(from, to, "Possession " + possession.number() + ", ends with: " + possession.outcome());
                append(text, whole);
                inside(whole, findings).forEach(cue -> append(text, cue));
                free = to;
            }
        }
        return text.toString();
    }

    private static List<Cue> inside(Cue possession, List<ChosenFinding> findings) {
        List<Cue> cues = new ArrayList<>();
        for (int i = 0; i < findings.size(); ) {
            long from = start(possession, findings.get(i));
            int next = i;
            while (next < findings.size() && start(possession, findings.get(next)) == from) {
                next++;
            }
            List<ChosenFinding> together = findings.subList(i, next);
            long end = together.stream()
                    .mapToLong(f -> milliseconds(f.finding().toSeconds()))
                    .max()
                    .orElseThrow();
            long limit = next < findings.size() ? start(possession, findings.get(next)) : possession.to();
            long to = Math.min(Math.max(end, from + 1), limit);
            boolean all = from == possession.from() && to == possession.to();
            if (to > from && !all) {
                cues.add(new Cue(from, to, title(together)));
            } else if (all && to - from > 1) {
                // Two cues of one span are not nested; a millisecond makes the inner one the shorter.
                cues.add(new Cue(from, to - 1, title(together)));
            }
            i = next;
        }
        return cues;
    }

    private static long start(Cue possession, ChosenFinding finding) {
        return Math.max(
                possession.from(),
                Math.min(possession.to(), milliseconds(finding.finding().fromSeconds())));
    }

    private static String title(List<ChosenFinding> findings) {
        return findings.stream()
                .map(f -> f.number() + " " + f.finding().kind().words() + ": "
                        + f.finding().sentence())
                .collect(Collectors.joining(" / "));
    }

    private static long milliseconds(double seconds) {
        return Math.max(0, Math.round(seconds * THOUSAND));
    }

    private static void append(StringBuilder text, Cue cue) {
        text.append('\n')
                .append(time(cue.from()))
                .append(" --> ")
                .append(time(cue.to()))
                .append('\n')
                .append(escaped(cue.title()))
                .append('\n');
    }

    private static String time(long milliseconds) {
        long seconds = milliseconds / THOUSAND;
        return String.format(
                Locale.ROOT,
                "%02d:%02d:%02d.%03d",
                seconds / (SIXTY * SIXTY),
                seconds / SIXTY % SIXTY,
                seconds % SIXTY,
                milliseconds % THOUSAND);
    }

    /** One line, without what begins a tag, an escape, or an arrow. */
    private static String escaped(String title) {
        return title.replaceAll("\\R", " ")
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;");
    }
}
