package floorgauge.events.spacing;

import floorgauge.events.play.PlayerPath;
import java.util.ArrayList;
import java.util.List;

/** When an action passes by, and who is in it: near team-mates are no fault then. Indexes are the play's. */
public final class ActionSpans {

    private record Span(int from, int to, List<PlayerPath> players) {}

    private record Maybe(Span span, double probability) {}

    private final List<Span> spans = new ArrayList<>();
    private final List<Maybe> maybes = new ArrayList<>();

    /** Adds an action from an index to another, both included. */
    public void add(int from, int to, List<PlayerPath> players) {
        spans.add(new Span(from, to, List.copyOf(players)));
    }

    /** Adds what may be an action. */
    public void maybe(int from, int to, List<PlayerPath> players, double probability) {
        maybes.add(new Maybe(new Span(from, to, List.copyOf(players)), probability));
    }

    /** The probability of the likeliest doubtful action at an index. */
    public double doubt(int i) {
        double most = 0;
        for (Maybe maybe : maybes) {
            most = i >= maybe.span.from && i <= maybe.span.to ? Math.max(most, maybe.probability) : most;
        }
        return most;
    }

    /** The probability of the likeliest doubtful action of one of the two at an index. */
    public double doubt(int i, PlayerPath a, PlayerPath b) {
        double most = 0;
        for (Maybe maybe : maybes) {
            boolean theirs = maybe.span.players.contains(a) || maybe.span.players.contains(b);
            most = theirs && i >= maybe.span.from && i <= maybe.span.to ? Math.max(most, maybe.probability) : most;
        }
        return most;
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
