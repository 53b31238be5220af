package floorgauge.eval.fit;

import floorgauge.eval.score.Decimals;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Standards that were fitted to labels, with what is to be said of them.
 *
 * @param base the standards that the fit started from
 * @param standards the ones to go on with
 * @param sentences what was gained, or why nothing was fitted, one for each kind of finding
 */
public record FittedStandards(Standards base, Standards standards, List<String> sentences) {

    public FittedStandards {
        Objects.requireNonNull(base, "base");
        Objects.requireNonNull(standards, "standards");
        sentences = List.copyOf(sentences);
    }

    /** A standards file with what differs from the defaults, the sentences above it as comments. */
    public String file() {
        StringBuilder text = new StringBuilder();
        sentences.forEach(s -> text.append("# ").append(s).append('\n'));
        if (!standards.team().isEmpty()) {
            text.append("team: \"").append(standards.team().replace("\"", "'")).append("\"\n");
        }
        lines().forEach((group, lines) -> {
            text.append(group).append(":\n");
            lines.forEach(line -> text.append("  ").append(line).append('\n'));
        });
        return text.toString();
    }

    private SortedMap<String, List<String>> lines() {
        SortedMap<String, List<String>> groups = new TreeMap<>();
        for (Map.Entry<Setting, Double> entry : standards.values().entrySet()) {
            Setting setting = entry.getKey();
            if (entry.getValue() != setting.defaultValue()) {
                groups.computeIfAbsent(setting.group(), g -> new ArrayList<>()).add(line(setting, entry.getValue()));
            }
        }
        return groups;
    }

    private String line(Setting setting, double value) {
        String unit = setting.quantity().unit();
        return setting.setting() + ": " + Decimals.plain(value) + (unit.isEmpty() ? "" : " " + unit) + "  # was "
                + Decimals.plain(base.of(setting)) + "; " + setting.meaning();
    }
}
