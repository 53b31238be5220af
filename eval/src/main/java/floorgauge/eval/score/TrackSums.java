package floorgauge.eval.score;

import floorgauge.eval.tracking.ClearMatching;
import floorgauge.eval.tracking.EventLog;
import floorgauge.eval.tracking.HotaPoint;
import floorgauge.eval.tracking.HotaScores;
import floorgauge.eval.tracking.SimilarityTable;
import floorgauge.eval.tracking.TrackingEvent;
import floorgauge.eval.tracking.TrackingScores;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/**
 * The track measures of one film as sums. HOTA and its parts are means over thresholds of ratios; their sums are the film's
 * value times its labelled sightings, so that films weigh by what was labelled in them.
 */
final class TrackSums {

    static final String GROUP = "tracks";

    private TrackSums() {}

    static SortedMap<Measure, Sum> of(SimilarityTable table, boolean onFloor, double zeroAtMetres) {
        TrackingScores scores = TrackingScores.of(table, 0.5);
        SortedMap<Measure, Sum> sums = new TreeMap<>();
        double truths = scores.clear().truths();
        if (truths > 0) {
            weighted(sums, "HOTA", scores.hota(), HotaPoint::hota, truths);
            weighted(sums, "DetA", scores.hota(), HotaPoint::detectionAccuracy, truths);
            weighted(sums, "AssA", scores.hota(), HotaPoint::associationAccuracy, truths);
            weighted(sums, "LocA", scores.hota(), HotaPoint::localisationAccuracy, truths);
        }
        double wrong = scores.clear().misses()
                + scores.clear().falseAlarms()
                + scores.clear().switches();
        sums.put(Measure.share(GROUP, "MOTA"), new Sum(truths - wrong, truths));
        sums.put(Measure.share(GROUP, "recall"), new Sum(scores.clear().pairs(), truths));
        sums.put(
                Measure.share(GROUP, "precision"),
                new Sum(scores.clear().pairs(), scores.clear().results()));
        double twice = 2.0 * scores.identity().truePositives();
        double apart = scores.identity().misses() + scores.identity().falseAlarms();
        sums.put(Measure.share(GROUP, "IDF1"), new Sum(twice, twice + apart));
        sums.put(
                Measure.error(GROUP, "switches per 1000 sightings", ""),
                new Sum(1000.0 * scores.clear().switches(), truths));
        sums.put(
                Measure.error(GROUP, "fragments per 1000 sightings", ""),
                new Sum(1000.0 * scores.clear().fragments(), truths));
        if (onFloor) {
            sums.put(
                    Measure.error(GROUP, "floor error, mean", "m"),
                    new Sum(
                            zeroAtMetres
                                    * (scores.clear().pairs() - scores.clear().similaritySum()),
                            scores.clear().pairs()));
        }
        return sums;
    }

    /** Recall by what a labelled sighting was like, such as its height in pixels. */
    static SortedMap<Measure, Sum> recallBy(SimilarityTable table, TrackingConditions conditions) {
        EventLog log = ClearMatching.usual().match(table);
        SortedMap<Measure, Sum> sums = new TreeMap<>();
        log.events()
                .filter(e -> e.truthId().isPresent())
                .forEach(event -> conditions
                        .of(event.frame(), event.truthId().getAsInt())
                        .forEach(condition -> add(sums, condition, event)));
        return sums;
    }

    private static void add(SortedMap<Measure, Sum> sums, String condition, TrackingEvent event) {
        sums.merge(
                Measure.share("tracks by condition", "recall, " + condition),
                new Sum(event.kind().paired() ? 1 : 0, 1),
                Sum::plus);
    }

    private static void weighted(
            SortedMap<Measure, Sum> sums,
            String name,
            HotaScores scores,
            ToDoubleFunction<HotaPoint> part,
            double weight) {
        sums.put(Measure.share(GROUP, name), new Sum(scores.mean(part) * weight, weight));
    }
}
