package floorgauge.app.command;

import floorgauge.app.chain.ChainTimes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * How long each stage took, threads added up, and how many frames of film a second that is, one stage a line; then what the clock
 * showed.
 */
final class TimingTable {

    private static final Set<String> NETWORKS = Set.of("detector", "poses", "numbers", "ball");
    private static final String LINE = "%-22s %9.1f s %9s frames a second";

    private final ChainTimes.Summary summary;

    TimingTable(ChainTimes times) {
        this.summary = times.summary();
    }

    /** Nothing but one sentence where no film was measured. */
    List<String> lines() {
        if (summary.frames() == 0) {
            return List.of("timings: no film was measured in this run");
        }
        List<String> lines = new ArrayList<>();
        double whole = 0;
        double networks = 0;
        lines.add(String.format(
                Locale.ROOT, "timings of %d frames, %.1f s of film", summary.frames(), summary.filmSeconds()));
        for (Map.Entry<String, Double> stage : summary.stages().entrySet()) {
            lines.add(line(stage.getKey(), stage.getValue()));
            whole += stage.getValue();
            networks += NETWORKS.contains(stage.getKey()) ? stage.getValue() : 0;
        }
        lines.add(line("all stages", whole));
        lines.add(line("networks alone", networks));
        lines.add(line("by the clock", summary.clockSeconds()));
        lines.add(line("reading alone", summary.readingSeconds()));
        return lines;
    }

    private String line(String stage, double seconds) {
        String rate = seconds > 0 ? String.format(Locale.ROOT, "%.1f", summary.frames() / seconds) : "-";
        return String.format(Locale.ROOT, LINE, stage, seconds, rate);
    }
}
