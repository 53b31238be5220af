package floorgauge.app.result;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Everything beside the film that decides a result, so that a film measured with the same settings need not be measured
 * again.
 *
 * @param values by name, in the order of the names; files stand in it by the SHA-256 of their bytes
 */
public record RunSettings(SortedMap<String, String> values) {

    public RunSettings {
        values = Collections.unmodifiableSortedMap(new TreeMap<>(values));
    }

    public static RunSettings of(Map<String, String> values) {
        return new RunSettings(new TreeMap<>(values));
    }

    /** The key of a result: SHA-256 over the film's own digest and the settings. */
    public String keyFor(String filmSha256) {
        StringBuilder text = new StringBuilder(filmSha256).append('\n');
        values.forEach(
                (name, value) -> text.append(name).append('=').append(value).append('\n'));
        return Digest.ofText(text.toString());
    }
}
