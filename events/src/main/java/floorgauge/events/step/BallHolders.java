package floorgauge.events.step;

import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;

/** Who has the ball when, as the passes, handoffs and shots of a possession tell. */
public final class BallHolders {

    /** A stretch of control. */
    public record Span(int trackId, double fromSeconds, double toSeconds) {}

    private final List<Span> spans = new ArrayList<>();
    private final List<Finding> events;

    public BallHolders(PossessionFindings possession) {
        double start = possession.possession().fromSeconds();
        double end = possession.possession().toSeconds();
        events = possession.findings().stream()
                .filter(f -> isBall(f.kind()) && holder(f).isPresent())
                .sorted(Comparator.comparingDouble(Finding::fromSeconds))
                .toList();
        double gained = start;
        int next = -1;
        for (Finding event : events) {
            spans.add(new Span(holder(event).getAsInt(), Math.min(gained, event.fromSeconds()), event.fromSeconds()));
            gained = event.toSeconds();
            next = event.holder(Role.RECEIVER).orElse(-1);
        }
        if (next >= 0 && gained < end) {
            spans.add(new Span(next, gained, end));
        }
    }

    private static boolean isBall(FindingKind kind) {
        return switch (kind) {
            case PASS, HANDOFF, SHOT, TURNOVER -> true;
            default -> false;
        };
    }

    private static OptionalInt holder(Finding event) {
        return event.holder(event.kind() == FindingKind.SHOT ? Role.SHOOTER : Role.PASSER);
    }

    /** Passes, handoffs, shots and turnovers in order of time. */
    public List<Finding> events() {
        return events;
    }

    public List<Span> spansOf(int trackId) {
        return spans.stream().filter(s -> s.trackId() == trackId).toList();
    }

    /** Share of a span of time in which a player has the ball. */
    public double share(int trackId, double from, double to) {
        double held = spansOf(trackId).stream()
                .mapToDouble(s -> Math.max(0, Math.min(to, s.toSeconds()) - Math.max(from, s.fromSeconds())))
                .sum();
        return to > from ? held / (to - from) : 0;
    }
}
