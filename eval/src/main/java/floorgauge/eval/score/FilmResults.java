package floorgauge.eval.score;

import floorgauge.eval.events.EventMark;
import floorgauge.eval.tracking.MotChallengeFile;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What was measured on one film.
 *
 * @param name of the film
 * @param sha256 of its bytes
 * @param folder within the results folder; empty text where the results folder is the film's own
 * @param durationSeconds above 0
 * @param frames how many, at least 1
 * @param possessions in the order of the sheet
 * @param findings in the order of the sheet; ids are the sheet's anchors
 * @param tracks every sighting; empty where the text is missing
 * @param conditions what breakdowns go by: rules, court source, court status
 */
public record FilmResults(
        String name,
        String sha256,
        String folder,
        double durationSeconds,
        long frames,
        List<PossessionSpan> possessions,
        List<EventMark> findings,
        Optional<MotChallengeFile> tracks,
        SortedMap<String, String> conditions)
        implements ErrorLinks {

    public FilmResults {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(sha256, "sha256");
        Objects.requireNonNull(folder, "folder");
        Objects.requireNonNull(tracks, "tracks");
        possessions = List.copyOf(possessions);
        findings = List.copyOf(findings);
        conditions = Collections.unmodifiableSortedMap(new TreeMap<>(conditions));
        if (!(durationSeconds > 0 && Double.isFinite(durationSeconds)) || frames < 1) {
            throw new IllegalArgumentException("a film has a length: " + durationSeconds + " s, " + frames);
        }
    }

    /** Mean frame rate, which makes times out of MOTChallenge frame numbers. */
    public double framesPerSecond() {
        return frames / durationSeconds;
    }

    /** Opens the film's sheet, relative to the results folder. */
    public String link() {
        return folder.isEmpty() ? "sheet.html" : folder + "/sheet.html";
    }

    /** Opens the sheet at the finding, else at the possession of that time, else at its head. */
    @Override
    public String to(double timeSeconds, Optional<EventMark> finding) {
        if (finding.isPresent()) {
            return link() + "#" + finding.get().id();
        }
        return possessions.stream()
                .filter(p -> p.contains(timeSeconds))
                .findFirst()
                .map(p -> link() + "#possession-" + p.number())
                .orElseGet(this::link);
    }
}
