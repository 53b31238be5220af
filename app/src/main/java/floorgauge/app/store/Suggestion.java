package floorgauge.app.store;

import floorgauge.court.track.JerseyReading;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * Whom a track without a name may be: he who wears the number that was read, or who was said to be another track of this
 * film and looks like it. Nobody is suggested who was in view elsewhere at the same time, or who wears the other kit. It is
 * only ever a suggestion.
 *
 * @param player who
 * @param byNumber whether a number was read; else the shirt is remembered
 */
public record Suggestion(Player player, boolean byNumber) {

    /** Tracks that a tracker breaks may overlap by this much and still be one person. */
    private static final double SAME_TIME_SECONDS = 0.5;

    /** Just noticeable, see {@link ShirtColour#differenceTo}. */
    private static final double NOTICEABLE = 2.3;

    /** One shirt under one gym's light, here and there on the floor (common practice). */
    private static final double SAME_SHIRT = 3 * NOTICEABLE;

    public Suggestion {
        Objects.requireNonNull(player, "player");
    }

    /**
     * Suggestions by track; tracks that nothing tells of are missing.
     *
     * @param tracks all of one film
     * @param players the roster
     */
    public static Map<Integer, Suggestion> of(List<StoredTrack> tracks, List<Player> players) {
        Map<Integer, Suggestion> suggestions = new TreeMap<>();
        for (StoredTrack track : tracks) {
            if (track.player().isEmpty()) {
                Optional<Suggestion> told = byNumber(track, tracks, players);
                told.or(() -> byShirt(track, tracks, players)).ifPresent(s -> suggestions.put(track.trackId(), s));
            }
        }
        return suggestions;
    }

    private static Optional<Suggestion> byNumber(StoredTrack track, List<StoredTrack> tracks, List<Player> players) {
        return only(players.stream()
                        .filter(p -> wears(p, track).orElse(false))
                        .filter(p -> mayBe(p, track, tracks))
                        .toList())
                .map(p -> new Suggestion(p, true));
    }

    private static Optional<Suggestion> byShirt(StoredTrack track, List<StoredTrack> tracks, List<Player> players) {
        return only(players.stream()
                        .filter(p -> wears(p, track).orElse(true))
                        .filter(p -> mayBe(p, track, tracks))
                        .filter(p -> looksLike(p, track, tracks))
                        .toList())
                .map(p -> new Suggestion(p, false));
    }

    private static Optional<Player> only(List<Player> players) {
        return players.size() == 1 ? Optional.of(players.get(0)) : Optional.empty();
    }

    /** Whether the number that was read is his; empty where none was. */
    private static Optional<Boolean> wears(Player player, StoredTrack track) {
        Optional<JerseyReading> read = track.appearance().jersey();
        return read.map(r -> player.number().equals(OptionalInt.of(r.number())));
    }

    private static boolean is(StoredTrack track, Player player) {
        return track.player().filter(p -> p.id().equals(player.id())).isPresent();
    }

    private static boolean mayBe(Player player, StoredTrack track, List<StoredTrack> tracks) {
        return player.active()
                && tracks.stream()
                        .filter(t -> is(t, player))
                        .allMatch(t -> t.team() == track.team() && t.togetherSeconds(track) <= SAME_TIME_SECONDS);
    }

    /** Whether the shirt is one that he wears on this film, and that nobody else of his kit does. */
    private static boolean looksLike(Player player, StoredTrack track, List<StoredTrack> tracks) {
        List<StoredTrack> his = tracks.stream().filter(t -> is(t, player)).toList();
        boolean same = his.stream().anyMatch(t -> difference(t, track).orElse(Double.MAX_VALUE) <= SAME_SHIRT);
        return same
                && tracks.stream()
                        .filter(t -> t.trackId() != track.trackId() && t.team() == track.team())
                        .filter(t -> isSomeoneElse(t, his, player))
                        .allMatch(t -> difference(t, track).orElse(Double.MAX_VALUE) > 2 * SAME_SHIRT);
    }

    /** Said to be another, or in view together with him. */
    private static boolean isSomeoneElse(StoredTrack track, List<StoredTrack> his, Player player) {
        return !is(track, player)
                && (track.player().isPresent()
                        || his.stream().anyMatch(t -> t.togetherSeconds(track) > SAME_TIME_SECONDS));
    }

    private static Optional<Double> difference(StoredTrack one, StoredTrack other) {
        OptionalInt a = one.appearance().shirtRgb();
        OptionalInt b = other.appearance().shirtRgb();
        return a.isPresent() && b.isPresent()
                ? Optional.of(ShirtColour.of(a.getAsInt()).differenceTo(ShirtColour.of(b.getAsInt())))
                : Optional.empty();
    }
}
