package floorgauge.events.spacing;

import floorgauge.events.play.PlayerPath;
import java.util.ArrayList;
import java.util.List;

/** When an action passes by, and who is in it: near team-mates are no fault then. Indexes are the play's. */
public final class ActionSpans {

    private record Span(int from, int to, List<PlayerPath> players) {}

    private final List<Span> spans = new ArrayList<>();

    /** Adds an action from an index to another, both included. */
    public void add(int from, int to, List<PlayerPath> players) {
        spans.add(new Span(from, to, List.copyOf(players)));
    }

    /** Whether any action goes on. */
    public boolean at(int i) {
        return spans.stream().anyMatch(s -> i >= s.from && i <= s.to);
    }

    /** Whether an action with either of the two goes on. */
    public boolean at(int i, PlayerPath a, PlayerPath b) {
        return spans.stream()
                .anyMatch(s -> i >= s.from && i <= s.to && (s.players.contains(a) || s.players.contains(b)));
    }
}
