package floorgauge.eval.score;

import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.tracking.FloorSimilarity;
import floorgauge.eval.tracking.SimilarityTable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One film's measures and errors.
 *
 * @param sums all measures
 * @param events both sides' events, for curves
 * @param errors in the order of {@link ErrorRow#ORDER}
 * @param conditions what breakdowns go by
 */
public record FilmScore(FilmSums sums, EventFilm events, List<ErrorRow> errors, SortedMap<String, String> conditions) {

    public FilmScore {
        errors = errors.stream().sorted(ErrorRow.ORDER).toList();
        conditions = Collections.unmodifiableSortedMap(new TreeMap<>(conditions));
    }

    /** Scores one film. */
    public static FilmScore of(FilmPair pair, EventTolerance tolerance) {
        EventFilm events = pair.events();
        SortedMap<Measure, Sum> sums = EventSums.of(events, tolerance);
        List<ErrorRow> errors = new ArrayList<>(EventRows.of(events, tolerance, pair.results()));
        Optional<SimilarityTable> tracks = pair.tracks();
        if (tracks.isPresent()) {
            sums.putAll(TrackSums.of(tracks.get(), pair.onFloor(), FloorSimilarity.DEFAULT.zeroAtMetres()));
            TrackingConditions conditions =
                    new TrackingConditions(pair.labels().tracks().orElseThrow());
            sums.putAll(TrackSums.recallBy(tracks.get(), conditions));
            errors.addAll(TrackRows.of(tracks.get(), pair.results()));
        }
        SortedMap<String, String> conditions = new TreeMap<>(pair.results().conditions());
        pair.labels().labels().scene().ifPresent(s -> conditions.put("scenario", s.name()));
        return new FilmScore(new FilmSums(pair.results().name(), sums), events, errors, conditions);
    }
}
