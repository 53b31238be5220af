package floorgauge.eval.score;

import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventMark;
import floorgauge.eval.events.Identities;
import floorgauge.eval.events.TrackIdentities;
import floorgauge.eval.tracking.BoxSimilarity;
import floorgauge.eval.tracking.ClearMatching;
import floorgauge.eval.tracking.FloorSimilarity;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.eval.tracking.SimilarityTable;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.UnclearSpan;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The labels of a film and what was measured on it.
 *
 * @param labels what was labelled
 * @param results what was measured
 */
public record FilmPair(LabelledFilm labels, FilmResults results) {

    private static final double SECONDS_PER_HOUR = 3600;

    /** A last frame lasts, and what is marked on it may end with it. */
    private static final double LAST_FRAME_SECONDS = 0.1;

    public FilmPair {
        Objects.requireNonNull(labels, "labels");
        Objects.requireNonNull(results, "results");
        requireWithin(labels, results.durationSeconds());
    }

    /** A label after the end of the film is one of another film, or of another time base. */
    private static void requireWithin(LabelledFilm labels, double durationSeconds) {
        for (LabelledEvent event : labels.labels().events()) {
            requireWithin(labels, "events, id " + event.id() + ", from", event.fromSeconds(), durationSeconds);
            requireWithin(labels, "events, id " + event.id() + ", to", event.toSeconds(), durationSeconds);
        }
        List<UnclearSpan> unclear = labels.labels().unclear();
        for (int i = 0; i < unclear.size(); i++) {
            requireWithin(labels, "unclear[" + i + "].to", unclear.get(i).toSeconds(), durationSeconds);
        }
    }

    private static void requireWithin(LabelledFilm labels, String field, double seconds, double durationSeconds) {
        if (seconds > durationSeconds + LAST_FRAME_SECONDS) {
            throw new ScoreException(
                    labels.file(),
                    field,
                    "expected a time within the film's " + Decimals.of(durationSeconds, 2) + " s, found "
                            + Decimals.of(seconds, 2));
        }
    }

    /** How the tracks compare on the floor where both sides know it, else in the picture; empty without labelled tracks. */
    public Optional<SimilarityTable> tracks() {
        if (labels.tracks().isEmpty() || results.tracks().isEmpty()) {
            return Optional.empty();
        }
        MotChallengeFile truth = labels.tracks().get();
        MotChallengeFile found = results.tracks().get();
        double rate = results.framesPerSecond();
        long last = results.frames() - 1;
        if (onFloor(truth) && onFloor(found)) {
            return Optional.of(
                    SimilarityTable.of(truth.floor(rate, last), found.floor(rate, last), FloorSimilarity.DEFAULT));
        }
        return Optional.of(SimilarityTable.of(truth.boxes(rate, last), found.boxes(rate, last), new BoxSimilarity()));
    }

    /** Whether {@link #tracks} compares on the floor. */
    public boolean onFloor() {
        return labels.tracks().isPresent()
                && results.tracks().isPresent()
                && onFloor(labels.tracks().get())
                && onFloor(results.tracks().get());
    }

    private static boolean onFloor(MotChallengeFile tracks) {
        return tracks.rows().stream().anyMatch(r -> r.floor().isPresent());
    }

    /** Both sides' events. Roles are compared where labelled tracks bridge the ids. */
    public EventFilm events() {
        return new EventFilm(
                results.name(),
                results.durationSeconds() / SECONDS_PER_HOUR,
                marks(labels.labels()),
                results.findings(),
                labels.labels().unclear(),
                tracks().map(t ->
                        (Identities) new TrackIdentities(ClearMatching.usual().match(t))));
    }

    /** A second annotator in the place of the results. */
    public EventFilm against(LabelledFilm second) {
        return events().with(marks(second.labels()), Optional.of(Identities.same()));
    }

    private static List<EventMark> marks(FilmLabels labels) {
        return labels.events().stream().map(EventMark::of).toList();
    }
}
