package floorgauge.sampleclips.scenario;

import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Who guards whom from a time on, until the next change.
 *
 * @param fromSeconds start
 * @param men person id of the attacker by the id of his defender
 */
public record Guarding(double fromSeconds, SortedMap<Integer, Integer> men) {

    public Guarding {
        men = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(men));
    }
}
