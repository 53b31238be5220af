package floorgauge.eval.score;

import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * All measures of one film as sums.
 *
 * @param film its name
 * @param sums by measure; a measure that has nothing to say of this film is left out
 */
public record FilmSums(String film, SortedMap<Measure, Sum> sums) {

    public FilmSums {
        Objects.requireNonNull(film, "film");
        sums = Collections.unmodifiableSortedMap(new TreeMap<>(sums));
    }

    /** The measure over all films; NaN where none has anything to say. */
    public static double value(List<FilmSums> films, Measure measure) {
        Sum total = Sum.NONE;
        for (FilmSums film : films) {
            total = total.plus(film.sums.getOrDefault(measure, Sum.NONE));
        }
        return total.value();
    }
}
